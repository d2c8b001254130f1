"""The questions a crew asks in a morning, typed the way people write them: each is read as it is meant.

What is expected was worked out by hand, or stands printed in the sources that tests/published names.
"""

import shlex

import pytest
from click.testing import CliRunner

from rootcollar.cli.main import cli

ASKED = [
    ("mix --percent '2 percent' --total '4 gallons'", "10.2 fl oz (303 mL) of product in 4 gal"),
    ("mix --percent 20 --total '2.5-gal' --carrier oil", "64 fl oz (1.89 L) of product in 2.5 gal"),
    ("mix --ratio '1 to 4' --total 'a gallon'", "25.6 fl oz (757 mL) of product in 1 gal of finished mix: 20%"),
    (
        "mix --rate '2 qts/acre' --output '25 gpa' --total '4 gal.'",
        "10.2 fl oz (303 mL) of product in 4 gal of finished mix: 2%",
    ),
    ("mix --percent 1.5 --add-to '3 gal'", "5.85 fl oz (173 mL) of product on top of 3 gal"),
    (
        "dose basal-bark --diameter '2\"' --count '120 stems'",
        "0.69 gal (2.6 L) of finished mix, likely 0.48 gal to 1.2 gal",
    ),
    ("dose hack-squirt --diameter '6 inch' --count 10", "2 fl oz (60 mL) of finished mix"),
    ("dose foliar --crown \"4'\" --count 200 --strength '2%'", "for 200 plants"),
    ("dose cut-stump --diameter '4-6in' --count 25", "for 25 stems"),
    ("calibration --plot '18.5 ft x 18.5 ft' --seconds 75 --caught '150 fl oz' --tank '25 gal'", "149 gal/ac"),
    ("calibration --plot '18.5x18.5 ft' --seconds '1:15' --caught '25 fl. oz.' --caught-in '30 sec'", "62.1 gal/ac"),
    ("calibration --used '1.5 gal' --area '1000 sq ft'", "65.3 gal/ac"),
    ("calibration --used '2.4 gal' --plants 20 --count 250", "15.4 fl oz (454 mL) a plant; 30 gal"),
    ("calibration --feet 100 --seconds 34 --flow '0.25 gpm' --swath '36 in'", "20.6 gal/ac"),
    ("loads --area '3.2 acres' --output '25 gpa' --percent 2 --tank '4 gal'", "20 loads of 4 gal (15.1 L); 1.6 gal"),
    ("topup --left '1 1/2 gal' --percent 2 --to '4 gal'", "Add 6 1/4 fl oz"),
    ("carry --volume '4 gal' --empty '12 lbs'", "45.4 lb"),
    ("buy --need '1.6 gal' --sizes '2.5 gal'", "Buy 1 × 2.5 gal"),
    ("water --hardness '250 ppm' --tank '25 gal'", "14.6 grains/gal"),
    ("rinse --jug '2 1/2 gal'", "1.875 gal"),
    ("glove --carrier oil", "barrier laminate"),
    ("signal-word --oral III --dermal III --inhalation IV --eye I --skin IV", "DANGER"),
    ("strength --percent 41 --density '9.76 lb/gal' --says '4 lb ai/gal'", "Fits"),
    ("area '200 x 150 ft'", "30,000 sq ft"),
    ("area --diameter '235 ft'", "43,374 sq ft"),
    ("rate --have '4.5 lb ae/gal' --want '3 lb ae/gal' --rate '32 fl oz/ac'", "21.3 fl oz/ac"),
    ("mix --percent 3 --total '3 gal' --tank '1 gal'", "11.5 fl oz (341 mL)"),
    ("loads --total '80 gal' --tank '4 gal' --percent 2", "20 loads of 4 gal"),
]


@pytest.mark.parametrize(("typed", "answer"), ASKED, ids=[typed for typed, _ in ASKED])
def test_a_question_typed_as_people_write_it_is_read_as_they_mean_it(typed: str, answer: str) -> None:
    said = CliRunner(env={"COLUMNS": "110"}).invoke(cli, ["figure", *shlex.split(typed)])
    assert said.exit_code == 0, said.output
    assert answer in " ".join(said.stdout.partition("\n\n")[0].split())
