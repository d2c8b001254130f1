"""Season and hours, what is: sun, air, warmth and drops; what follows from it is judged elsewhere.

Question: when does the sun rise and set here, how fast does a drop dry, how warm was the spring?
Inputs: a day and a place; air temperature and humidity; least and most of a day; size of a drop, height, wind.
Outputs: moments in universal time or why there is none; wet bulb, dew point, Delta T; degree-days by a named way; the
time of a drop in the air.
Sources: NOAA's printing of Meeus; ASHRAE's psychrometrics; Zalom and others on degree-days; Schiller and Naumann.
Refuses: air that nobody works in, a day whose least is above its most. It knows no zone: a face names the clock.
"""

from rootcollar.timing.air import SEA_LEVEL_PA, delta_t_c, dew_point_c, pressure_pa, wet_bulb_c
from rootcollar.timing.degree_days import capped_c, met_approximation_c, simple_c, sine_c
from rootcollar.timing.fall import carried_m, fall_s, settling_m_s
from rootcollar.timing.sun import CIVIL, RISE, Day, Never, event, sun_day

__all__ = [
    "CIVIL", "RISE", "SEA_LEVEL_PA", "Day", "Never", "capped_c", "carried_m", "delta_t_c", "dew_point_c", "event",
    "fall_s", "met_approximation_c", "pressure_pa", "settling_m_s", "simple_c", "sine_c", "sun_day", "wet_bulb_c",
]  # fmt: skip
