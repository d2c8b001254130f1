"""Hazard: how harmful, to whom, and what keeps it off.

Question: how toxic is a product by route, what does that ask of clothing and water, where does an ingredient go?
Inputs: figures of a label or a source; toxicity categories; what a mix is thinned with; how many people work.
Outputs: categories and the signal word they lead to, the least to wear, gloves, wash water, leaching class.
Sources: 40 CFR 156.62, .64, .212 and 170; 49 CFR 173.6; each formula names its own.
Refuses: to replace a label's own word. What is reckoned here can only raise a doubt about what was typed, or a floor.
"""

__all__: list[str] = []
