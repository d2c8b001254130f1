"""The empty sheet: nothing read, every line there, and fillable line by line."""

import re
import tomllib

import pytest

from rootcollar.kernel.errors import BadInput
from rootcollar.shelf import FIELDS, fields_of, parse_sheet, template, unread

VALUES = {
    "text": '"as printed"', "texts": '["one"]', "states": '["WV"]', "flag": "true", "number": "1.5", "count": "2",
    "percent": "50", "date": "2025-05-20", "distances": '[{ from = "well", ft = 50 }]',
}  # fmt: skip


def test_an_untouched_template_is_a_sheet_of_which_nothing_has_been_read() -> None:
    sheet = parse_sheet("jug", tomllib.loads(template()))
    assert not sheet.lines and not sheet.methods
    wanted = [
        path for path, row in FIELDS.items()
        if row.belongs_to("foliar") and not path.startswith(("ingredient.", "site."))
    ]  # fmt: skip
    assert unread(sheet, "foliar") == wanted


def filled(method: str) -> str:
    """Return the template with every line filled in, for one kind of method."""
    out, block = [], ""
    for line in template().splitlines():
        heading = re.fullmatch(r"(?:# )?\[+(\w+)\]+", line)
        key = re.fullmatch(r"# (\S+) =", line)
        if heading:
            block = heading[1]
            out.append(line.removeprefix("# "))
        elif key and (block, key[1]) == ("method", "kind"):
            out.append(f'kind = "{method}"')
        elif key:
            row = FIELDS[f"{block}.{key[1]}"]
            if row.belongs_to(method):
                words = f'"{row.among[0]}"' if row.among else ""
                value = VALUES.get(row.kind) or (words if row.kind == "choice" else f"[{words}]")
                out.append(f"{key[1]} = {value}")
        else:
            out.append(line)
    return "\n".join(out)


@pytest.mark.parametrize("method", ["foliar", "hack_squirt", "cut_stump", "basal_bark"])
def test_a_template_with_every_line_filled_in_leaves_nothing_unread(method: str) -> None:
    sheet = parse_sheet("jug", tomllib.loads(filled(method)))
    assert unread(sheet, method) == []
    assert set(sheet.methods[method]) == set(fields_of(method))


def test_a_line_freed_without_a_value_does_not_pass() -> None:
    with pytest.raises(tomllib.TOMLDecodeError):
        tomllib.loads(template().replace("# rei_hours =", "rei_hours ="))


def test_a_line_freed_under_a_heading_left_commented_is_a_named_mistake() -> None:
    freed = template().replace("# max_target_height_ft =", "max_target_height_ft = 8")
    with pytest.raises(BadInput, match="max_target_height_ft"):
        parse_sheet("jug", tomllib.loads(freed))
