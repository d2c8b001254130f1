"""A passing and a failing example of every rule, one file a theme as in `rules`. Read only where rules are shown."""

from collections.abc import Mapping
from types import MappingProxyType

from rootcollar.label.example import Example
from rootcollar.label.examples.amounts import AMOUNTS
from rootcollar.label.examples.carried import CARRIED
from rootcollar.label.examples.crew import CREW
from rootcollar.label.examples.ground import GROUND
from rootcollar.label.examples.identity import IDENTITY
from rootcollar.label.examples.people import PEOPLE
from rootcollar.label.examples.place import PLACE
from rootcollar.label.examples.readers import READERS
from rootcollar.label.examples.use import USE

__all__ = ["EXAMPLES"]

EXAMPLES: Mapping[str, Example] = MappingProxyType(
    {**IDENTITY, **USE, **AMOUNTS, **PEOPLE, **GROUND, **CREW, **PLACE, **READERS, **CARRIED}
)
