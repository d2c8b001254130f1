"""Check the style budget of src/rootcollar: sizes, docstrings, annotations, files, figures.

Run it with no argument; it prints ``file:line: what, what is allowed`` for each fault and exits 1 if there is one.
"""

import ast
import re
import sys
from collections.abc import Iterator
from pathlib import Path

__all__ = ["faults", "main"]

SOURCE = Path(__file__).resolve().parent.parent / "src" / "rootcollar"

MODULE_LINES = 400
FUNCTION_LINES = 40
ARGUMENTS = 6
PLAIN_NUMBERS = {0, 0.5, 1, 2, 3, 4, 10, 100, 1000}  # 3 and 4 because circles, cones and roots need them

FIGURE_FREE = {
    "choose",
    "dose",
    "followup",
    "foresight",
    "hazard",
    "label",
    "mix",
    "record",
    "site",
    "survey",
    "timing",
    "work",
}
EXAMPLES = "label/examples"  # invented plans, shown as such: their figures need no source
FILE_ROOMS = {"cli", "exchange", "paper", "reference", "store", "web"}
FILE_CALLS = {"open", "read_text", "write_text", "read_bytes", "write_bytes", "mkdir", "unlink", "iterdir", "glob"}

Function = ast.FunctionDef | ast.AsyncFunctionDef
Fault = tuple[int, str]


def faults(text: str, room: str) -> list[Fault]:
    """Return line and fault of everything out of budget in a module's text; room: the folder below rootcollar."""
    tree = ast.parse(text)
    lines = text.splitlines()
    found = [*module_faults(tree, lines)]
    for node in ast.walk(tree):
        if isinstance(node, Function):
            found += size_faults(node, lines)
        if room not in FILE_ROOMS and isinstance(node, ast.Call):
            found += file_faults(node)
    found += public_faults(tree.body)
    if room in FIGURE_FREE:
        found += figure_faults(tree, lines)
    return sorted(found)


def module_faults(tree: ast.Module, lines: list[str]) -> Iterator[Fault]:
    """Yield what is wrong with a module as a whole: its length, its docstring, its list of public words."""
    if len(lines) > MODULE_LINES:
        yield 1, f"module of {len(lines)} lines, at most {MODULE_LINES}"
    if not tree.body:
        return
    if ast.get_docstring(tree) is None:
        yield 1, "module without docstring, one is needed"
    names = {target.id for node in tree.body for target in targets(node)}
    if len(tree.body) > 1 and "__all__" not in names:
        yield 1, "module without __all__, list its public words"


def targets(node: ast.stmt) -> Iterator[ast.Name]:
    """Yield the names that a statement assigns to."""
    places = node.targets if isinstance(node, ast.Assign) else [node.target] if isinstance(node, ast.AnnAssign) else []
    yield from (place for place in places if isinstance(place, ast.Name))


def size_faults(function: Function, lines: list[str]) -> Iterator[Fault]:
    """Yield what is too big about a function: its lines of code, its arguments."""
    body = function.body
    docstring = set(range(body[0].lineno, (body[0].end_lineno or 0) + 1)) if ast.get_docstring(function) else set()
    numbers = set(range(function.lineno, (function.end_lineno or 0) + 1)) - docstring
    count = sum(1 for number in numbers if (line := lines[number - 1].strip()) and not line.startswith("#"))
    if count > FUNCTION_LINES:
        yield function.lineno, f"{function.name} has {count} lines of code, at most {FUNCTION_LINES}"
    given = len(arguments(function))
    if given > ARGUMENTS:
        yield function.lineno, f"{function.name} has {given} arguments, at most {ARGUMENTS}: use a frozen dataclass"


def arguments(function: Function) -> list[ast.arg]:
    """Return the arguments of a function but self and cls."""
    words = function.args
    every = [*words.posonlyargs, *words.args, *words.kwonlyargs]
    return [word for word in every if word.arg not in {"self", "cls"}]


def public_faults(body: list[ast.stmt]) -> Iterator[Fault]:
    """Yield public classes and functions that lack a docstring or an annotation."""
    for node in body:
        if not isinstance(node, Function | ast.ClassDef) or node.name.startswith("_"):
            continue
        if ast.get_docstring(node) is None and not is_overload(node):
            yield node.lineno, f"{node.name} without docstring, one is needed"
        if isinstance(node, ast.ClassDef):
            yield from public_faults(node.body)
            continue
        rest = [word for word in (node.args.vararg, node.args.kwarg) if word is not None]
        bare = [word.arg for word in arguments(node) + rest if word.annotation is None]
        if bare or node.returns is None:
            yield node.lineno, f"{node.name} without the type of {', '.join(bare) or 'its result'}, all are needed"


def is_overload(node: Function | ast.ClassDef) -> bool:
    """Tell whether a definition only adds a type to another of the same name, or sets what another gets."""
    marks = [ast.unparse(mark) for mark in node.decorator_list]
    return any(mark.endswith(("overload", ".setter")) for mark in marks)


def file_faults(call: ast.Call) -> Iterator[Fault]:
    """Yield a call that touches a file."""
    called = call.func
    if isinstance(called, ast.Name) and called.id == "open":
        yield call.lineno, f"open() in a room, only {', '.join(sorted(FILE_ROOMS))} touch files"
    if isinstance(called, ast.Attribute) and called.attr in FILE_CALLS:
        yield call.lineno, f".{called.attr}() in a room, only {', '.join(sorted(FILE_ROOMS))} touch files"


def figure_faults(tree: ast.Module, lines: list[str]) -> Iterator[Fault]:
    """Yield numbers that are neither plain nor a constant of the module with its reason beside it."""
    for node, following in zip(tree.body, [*tree.body[1:], None], strict=False):
        named = [name.id for name in targets(node)]
        if named and all(re.fullmatch(r"_?[A-Z][A-Z0-9_]*", name) for name in named):
            if any(figures(node)) and not explained(node, following, lines):
                yield node.lineno, f"{', '.join(named)} without its source, say it in a comment"
            continue
        for number in figures(node):
            plain = ", ".join(str(one) for one in sorted(PLAIN_NUMBERS))
            yield number.lineno, f"the figure {number.value!r}, allowed are {plain} and constants with a source"


def figures(node: ast.AST) -> Iterator[ast.Constant]:
    """Yield the numbers below a node that carry a meaning of their own; decorators hold the ranges of tests."""
    if isinstance(node, ast.Constant) and type(node.value) in {int, float} and node.value not in PLAIN_NUMBERS:
        yield node
    marks = node.decorator_list if isinstance(node, Function) else []
    for part in ast.iter_child_nodes(node):
        if part not in marks:
            yield from figures(part)


def explained(node: ast.stmt, following: ast.stmt | None, lines: list[str]) -> bool:
    """Tell whether a constant has a comment above it or on its lines, or a string below it."""
    above = lines[max(node.lineno - 2, 0)].strip() if node.lineno > 1 else ""
    own = lines[node.lineno - 1 : node.end_lineno]
    below = isinstance(following, ast.Expr) and isinstance(following.value, ast.Constant)
    return above.startswith("#") or any("#" in line for line in own) or below


def main() -> int:
    """Check every module, print the faults and return the exit code."""
    count = 0
    for path in sorted(SOURCE.rglob("*.py")):
        inside = path.relative_to(SOURCE)
        room = EXAMPLES if inside.parent.as_posix() == EXAMPLES else inside.parts[0]
        for line, fault in faults(path.read_text(encoding="utf-8"), room):
            if inside.name == "__main__.py" and "__all__" in fault:
                continue
            count += 1
            print(f"{path.relative_to(SOURCE.parent.parent)}:{line}: {fault}")
    return 1 if count else 0


if __name__ == "__main__":
    sys.exit(main())
