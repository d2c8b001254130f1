"""placeholder"""


def to_buy(*a): ...
