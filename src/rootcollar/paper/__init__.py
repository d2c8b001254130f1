"""Paper: the packet that goes to the woods, as a PDF that prints on any printer and reads aloud.

Question: what must the crew hold in its hands, with no signal and wet glasses?
Inputs: a `work.Packet` (texts and numbers already in the reader's units), the day it was made, the paper size.
Outputs: the bytes of a tagged PDF/UA-1, the same bytes every time: day sheet, units, mix cards,
plain pages, tags, signs, record sheet, rules; or a picture of page one.
Sources: none of its own; it prints the sources it is given.
Refuses: a day sheet that would not stand on one page; to print a struck line as work; to read a text as markup; any
letter shape that is not in its own fonts (such a letter is spelled out in brackets).
"""

from rootcollar.paper.packet import PAPERS, render_packet, render_picture
from rootcollar.paper.words import day_words

__all__ = ["PAPERS", "day_words", "render_packet", "render_picture"]
