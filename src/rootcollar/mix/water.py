"""Hard water: what calcium and magnesium come to, and the ammonium sulphate that offsets them."""

from __future__ import annotations

from rootcollar.kernel.formula import formula

__all__ = ["ams_for_ion", "ams_in_tank_g", "ams_lb_per_100_gal", "hardness_ppm", "ion_from_hardness_ppm"]


@formula(
    "calcium_ppm * per_calcium + magnesium_ppm * per_magnesium",
    gives="ppm as CaCO3",
    source="EXT-GEN",
    calcium_ppm=(0, 400),
    magnesium_ppm=(0, 150),
    per_calcium=(2.4, 2.6),
    per_magnesium=(4, 4.2),
)
def hardness_ppm(calcium_ppm: float, magnesium_ppm: float, per_calcium: float, per_magnesium: float) -> float:
    """Return the hardness of water as calcium carbonate [ppm]. calcium_ppm, magnesium_ppm: by a water report [ppm].

    per_calcium, per_magnesium: hardness of one ppm of each, the ratio of the weights.
    """
    return calcium_ppm * per_calcium + magnesium_ppm * per_magnesium


@formula("hardness_ppm / per_ion", gives="ppm", source="EXT-GEN", hardness_ppm=(0, 1000), per_ion=(2.4, 4.2))
def ion_from_hardness_ppm(hardness_ppm: float, per_ion: float) -> float:
    """Return the calcium, or the magnesium, that would make a hardness alone [ppm]. per_ion: as `hardness_ppm`."""
    return hardness_ppm / per_ion


@formula(
    "ion_ppm * lb_per_100_gal_per_ppm",
    gives="lb/100 gal",
    source="NDSU15",
    ion_ppm=(0, 1000),
    lb_per_100_gal_per_ppm=(0.002, 0.042),
)
def ams_for_ion(ion_ppm: float, lb_per_100_gal_per_ppm: float) -> float:
    """Return the ammonium sulphate that offsets one ion [lb/100 gal] [NDSU15].

    ion_ppm: in the water [ppm]. lb_per_100_gal_per_ppm: of that ion.
    """
    return ion_ppm * lb_per_100_gal_per_ppm


@formula(
    "potassium + sodium + calcium + magnesium + iron",
    gives="lb/100 gal",
    source="NDSU15",
    potassium=(0, 2),
    sodium=(0, 5),
    calcium=(0, 10),
    magnesium=(0, 10),
    iron=(0, 5),
)
def ams_lb_per_100_gal(potassium: float, sodium: float, calcium: float, magnesium: float, iron: float) -> float:
    """Return the ammonium sulphate that offsets a water [lb/100 gal]: what each ion asks for, added up [NDSU15].

    potassium to iron: as `ams_for_ion` [lb/100 gal].
    """
    return potassium + sodium + calcium + magnesium + iron


@formula("ams_g_per_l * tank_l", gives="g", source="NDSU15", ams_g_per_l=(0.1, 30), tank_l=(1, 1000))
def ams_in_tank_g(ams_g_per_l: float, tank_l: float) -> float:
    """Return the ammonium sulphate for a tank [g]. ams_g_per_l: in the water. tank_l: of water."""
    return ams_g_per_l * tank_l
