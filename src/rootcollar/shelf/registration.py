"""Registration numbers: their pattern, the placeholder, and which product stands behind a distributor's name."""

from __future__ import annotations

import re

__all__ = ["base_product", "is_epa_reg_no", "is_placeholder", "sln_state"]

# Company and product number, then a distributor's company number where it is sold under another name: the order of
# the parts is read [40 CFR 152.132(d)(3), edition of 2015]; how many digits each may have is from memory, so generous.
_EPA = re.compile(r"(?P<company>\d{1,6})-(?P<product>\d{1,5})(?:-(?P<distributor>\d{1,6}))?")
_SLN = re.compile(r"(?:EPA SLN No\.? ?)?(?P<state>[A-Z]{2})[- ]?\d{2}-?\d{4,5}")


def is_epa_reg_no(text: str) -> bool:
    """Return whether a text is a registration number: company-product, or company-product-distributor."""
    return _EPA.fullmatch(text.strip()) is not None


def is_placeholder(text: str) -> bool:
    """Return whether the company part is all zeros: an invented number."""
    found = _EPA.fullmatch(text.strip())
    return found is not None and not found["company"].strip("0")


def base_product(text: str) -> str | None:
    """Return company-product without a distributor's number; None when the text is no registration number.

    A distributor's product is the same product, so both count together against one yearly maximum.
    """
    found = _EPA.fullmatch(text.strip())
    return f"{found['company']}-{found['product']}" if found else None


def sln_state(text: str) -> str | None:
    """Return the state of a special local need number, such as OR-000000; None when the text is no such number."""
    found = _SLN.fullmatch(text.strip())
    return found["state"] if found else None
