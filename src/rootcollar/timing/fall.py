"""Why the size of a drop matters: how long one hangs in still air, and how far wind takes it.

A picture of size only, without turbulence and without drying: never a distance at which anything is out of reach.
"""

from __future__ import annotations

from rootcollar.kernel.formula import formula, note, unwatched

__all__ = ["carried_m", "drag", "fall_s", "reynolds", "settling_m_s", "speed_under_drag"]

_WATER_KG_M3 = 998.2  # at 20 degC, as handbooks print it
_AIR_KG_M3 = 1.204  # at 20 degC and sea level, as handbooks print it
_AIR_PA_S = 1.813e-5  # how thick air is at 20 degC
_G = 9.80665  # m/s2, by definition
_UM = 1e-6  # metres, by definition
_PASSES = 200  # each pass halves what is off, far beyond what can be shown
_FASTEST_M_S = 20.0  # ours: no drop of water falls faster before it breaks
_CROWE = 1000  # Reynolds number above which drag stays as it is

_STOKES = 24  # SCHILLER
_SLOPE = 0.15  # SCHILLER
_POWER = 0.687  # SCHILLER
_ROUGH = 0.44  # SCHILLER


@formula(
    "where(reynolds < 1000, 24 / reynolds * (1 + 0.15 * reynolds ** 0.687), 0.44)",
    gives="coefficient",
    source="SCHILLER",
    reynolds=(0.001, 900),
)
def drag(reynolds: float) -> float:
    """Return the drag on a ball [coefficient]. reynolds: of it in the air [number]."""
    return _STOKES / reynolds * (1 + _SLOPE * reynolds**_POWER) if reynolds < _CROWE else _ROUGH


@formula(
    "1.204 * speed_m_s * drop_um * 1e-6 / 1.813e-5",
    gives="number",
    source="definition",
    speed_m_s=(0.0001, 6),
    drop_um=(5, 2000),
)
def reynolds(speed_m_s: float, drop_um: float) -> float:
    """Return the Reynolds number of a drop in air of 20 degC [number]. speed_m_s: [m/s]. drop_um: across [um]."""
    return _AIR_KG_M3 * speed_m_s * drop_um * _UM / _AIR_PA_S


@formula(
    "sqrt(4 / 3 * 9.80665 * drop_um * 1e-6 * (998.2 - 1.204) / (1.204 * drag))",
    gives="m/s",
    source="definition",
    drop_um=(5, 2000),
    drag=(0.4, 100),
)
def speed_under_drag(drop_um: float, drag: float) -> float:
    """Return at what speed weight and drag of a water drop balance [m/s]. drop_um: across [um]; drag: [coefficient]."""
    return float((_BALL * _G * drop_um * _UM * (_WATER_KG_M3 - _AIR_KG_M3) / (_AIR_KG_M3 * drag)) ** 0.5)


_BALL = 4 / 3  # of a ball's weight over its face


def settling_m_s(drop_um: float) -> float:
    """Return the speed at which a water drop falls in still air of 20 degC [m/s]. drop_um: across [um].

    Source: Schiller and Naumann's drag, solved by taking the middle again and again.
    """
    with unwatched():
        low, high = 0.0, _FASTEST_M_S
        for _ in range(_PASSES):
            middle = (low + high) / 2
            low, high = (middle, high) if _balance(drop_um, middle) > middle else (low, middle)
    _balance(drop_um, high)  # watched, so that the balance found can be seen
    return note("speed of fall", "at which the weight of the drop and the drag balance", high, "m/s", "SCHILLER")


def _balance(drop_um: float, speed: float) -> float:
    return speed_under_drag(drop_um, drag(reynolds(speed, drop_um))) if speed > 0 else 1.0


@formula("height_m / settling_m_s", gives="s", source="arithmetic", height_m=(0.1, 20), settling_m_s=(0.0005, 6))
def fall_s(height_m: float, settling_m_s: float) -> float:
    """Return how long a drop falls in still air [s]. height_m: [m]. settling_m_s: [m/s]."""
    return height_m / settling_m_s


@formula("fall_s * wind_m_s", gives="m", source="ONT13", fall_s=(0.1, 5000), wind_m_s=(0.1, 10))
def carried_m(fall_s: float, wind_m_s: float) -> float:
    """Return how far an even wind takes a drop while it falls [m]. fall_s: [s]. wind_m_s: [m/s]."""
    return fall_s * wind_m_s
