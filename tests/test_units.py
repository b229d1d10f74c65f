import subprocess
import sys
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from junctionary.units import (
    KINDS,
    Quantity,
    UnitError,
    WireSize,
    beside_its_own,
    convert,
    decimal,
    feet_and_inches,
    metric,
    read_quantity,
    read_wire_size,
    show,
    show_as,
)
from junctionary.units.showing import INCHES_PER_FOOT


def refused(text: object, kind: str) -> UnitError:
    with pytest.raises(UnitError) as caught:
        read_quantity(text, kind)
    return caught.value


@pytest.mark.parametrize(
    ("text", "kind", "magnitude", "unit"),
    [
        ("42 in", "length", "42", "in"),
        ("42in", "length", "42", "in"),
        ("  42   in ", "length", "42", "in"),
        ("42\u00a0in", "length", "42", "in"),
        ("3 ft 6 in", "length", "42", "in"),
        ("3ft 6-1/2in", "length", "42.5", "in"),
        ("3' 6\"", "length", "42", "in"),
        ("1-1/4 in", "length", "1.25", "in"),
        ("1 1/4 in", "length", "1.25", "in"),
        ("1¼ in", "length", "1.25", "in"),
        ("5/8 in", "length", "5/8", "in"),
        ("1.07 m", "length", "1.07", "m"),
        ("27 mm", "length", "27", "mm"),
        ("-8 ft", "height", "-8", "ft"),
        ("\u22123 ft 6 in", "height", "-42", "in"),
        ("-4 ft", "position", "-4", "ft"),
        ("20.3 in3", "volume", "20.3", "in3"),
        ("20.3 in^3", "volume", "20.3", "in3"),
        ("20.3 cu in", "volume", "20.3", "in3"),
        ("330 cm3", "volume", "330", "cm3"),
        ("20 A", "current", "20", "A"),
        ("30 mA", "current", "30", "mA"),
        ("8.5 kA", "current", "8.5", "kA"),
        ("120 V", "voltage", "120", "V"),
        ("1500 W", "load", "1500", "W"),
        ("1,200 W", "load", "1200", "W"),
        ("1.2 kW", "load", "1.2", "kW"),
        ("1440 VA", "load", "1440", "VA"),
        ("10 A", "load", "10", "A"),
        ("14 in-lb", "torque", "14", "in-lb"),
        ("14 lbf-in", "torque", "14", "in-lb"),
        ("20 ft-lb", "torque", "20", "ft-lb"),
        ("1.6 N m", "torque", "1.6", "N m"),
        ("1.6 Nm", "torque", "1.6", "N m"),
        ("1.6 N·m", "torque", "1.6", "N m"),
        ("75 C", "temperature", "75", "C"),
        ("86 F", "temperature", "86", "F"),
        ("75 degC", "temperature", "75", "C"),
        ("-10 °C", "temperature", "-10", "C"),
        ("0 deg", "angle", "0", "deg"),
        ("2240 ft2", "area", "2240", "ft2"),
        ("2240 sq ft", "area", "2240", "ft2"),
        ("0.5 ohm", "resistance", "0.5", "ohm"),
        ("1.2 Mohm", "resistance", "1.2", "Mohm"),
        ("1.2 M\u2126", "resistance", "1.2", "Mohm"),
        ("25 ms", "time", "25", "ms"),
    ],
)
def test_a_written_quantity_is_read_exactly(text: str, kind: str, magnitude: str, unit: str) -> None:
    quantity = read_quantity(text, kind)
    assert (quantity.magnitude, quantity.unit, quantity.text) == (Fraction(magnitude), unit, text)


@pytest.mark.parametrize("number", ["42", 42])
def test_a_bare_number_is_told_which_units_it_might_have(number: object) -> None:
    error = refused(number, "length")
    assert error.found == "42 has no unit"
    assert error.do == "write 42 in or 42 ft"


def test_a_wrong_dimension_is_named_beside_the_one_due() -> None:
    error = refused("20 V", "current")
    assert error.found == "20 V is a voltage; a current is due here"
    assert error.expected == "a current such as 20 A"
    assert error.do == "use A, mA or kA"


@pytest.mark.parametrize(
    ("text", "kind", "found"),
    [
        ("120/240 V", "voltage", "120/240 V is two voltages"),
        ("1/2 A", "current", "1/2 A holds a fraction, which is read in inches and feet only"),
        ("14 AWG", "length", "14 AWG is a wire size; a length is due here"),
        ("4/0 AWG", "length", "4/0 AWG is a wire size; a length is due here"),
        ("3 ft 6 in", "torque", "3 ft 6 in is a length; a torque is due here"),
        ("-3 ft", "length", "-3 ft is below zero"),
        ("-20 A", "current", "-20 A is below zero"),
        ("-500 F", "temperature", "-500 F is colder than can be"),
        ("nan m", "length", "nan m is not a number"),
        ("inf m", "length", "inf m is not a number"),
        (float("nan"), "length", "nan is not a number"),
        (float("inf"), "length", "inf is not a number"),
        ("1e400 m", "length", "1e400 m is in powers of ten"),
        ("9**9**9 m", "length", "9**9**9 m is not a length"),
        ("1000000000 m", "length", "1000000000 m is too large for any house"),
        ("9" * 5000 + " m", "length", "9" * 37 + "... is too long to be a length"),
        ("1,5 m", "length", "1,5 m has a comma that is not between thousands"),
        ("3 ft 14 in", "length", "3 ft 14 in has a foot or more in its inches"),
        ("1/0 in", "length", "1/0 in holds the fraction 1/0"),
        ("1-5/4 in", "length", "1-5/4 in holds the fraction 5/4"),
        ("1 m 20 cm", "length", "1 m 20 cm is not a length"),
        ("12 cubits", "length", "cubits is not a unit of length"),
        ("tall", "length", "tall is not a length"),
        ("", "length", "there is no length"),
        (None, "length", "nothing is not a length"),
        (True, "length", "true is not a length"),
        ([], "length", "a list is not a length"),
        ({}, "length", "a mapping is not a length"),
    ],
)
def test_what_is_no_quantity_is_refused_in_plain_words(text: object, kind: str, found: str) -> None:
    assert refused(text, kind).found == found


def test_a_unit_in_the_wrong_case_is_not_guessed_but_offered() -> None:
    assert refused("20 a", "current").do == "write 20 A"


def test_inches_and_millimetres_compare_exactly() -> None:
    foot, metric_foot = read_quantity("1 ft", "length"), read_quantity("304.8 mm", "length")
    assert foot == metric_foot
    assert hash(foot) == hash(metric_foot)
    assert foot < read_quantity("304.9 mm", "length") < read_quantity("1 m", "length")


def test_a_height_compares_with_lengths() -> None:
    assert read_quantity("-8 ft", "height") < read_quantity("0 in", "length")


@pytest.mark.parametrize(
    ("text", "kind", "unit", "expected"),
    [
        ("1 in", "length", "mm", Fraction("25.4")),
        ("1 in3", "volume", "cm3", Fraction("16.387064")),
        ("86 F", "temperature", "C", Fraction(30)),
        ("0 C", "temperature", "F", Fraction(32)),
        ("8.5 kA", "current", "A", Fraction(8500)),
        ("12 in-lb", "torque", "ft-lb", Fraction(1)),
        ("1.2 Mohm", "resistance", "ohm", Fraction(1_200_000)),
        ("1 ft2", "area", "sq in", Fraction(144)),
        ("25 ms", "time", "s", Fraction("0.025")),
    ],
)
def test_conversion_is_exact(text: str, kind: str, unit: str, expected: Fraction) -> None:
    assert read_quantity(text, kind).to(unit) == expected


def test_a_pound_force_inch_is_as_its_definition_makes_it() -> None:
    # 0.45359237 kg by 9.80665 m/s2 by 0.0254 m, each exact by definition.
    assert convert(Fraction(1), "in-lb", "N m") == Fraction("0.45359237") * Fraction("9.80665") * Fraction(
        "0.0254"
    )


def test_feet_with_inches_are_read_by_the_same_twelve_as_every_conversion() -> None:
    assert convert(Fraction(1), "ft", "in") == INCHES_PER_FOOT


@pytest.mark.parametrize("unit", ["VA", "A", "kVA"])
def test_watts_are_never_taken_for_volt_amperes_or_amperes(unit: str) -> None:
    watts = read_quantity("1500 W", "load")
    with pytest.raises(UnitError, match="cannot be turned into"):
        watts.to(unit)
    assert watts != Quantity(Fraction(1500), unit, "load")
    with pytest.raises(TypeError):
        _ = watts < Quantity(Fraction(1), unit, "load")


def test_watts_and_kilowatts_are_one_load() -> None:
    assert read_quantity("1500 W", "load") == read_quantity("1.5 kW", "load")


def test_every_example_and_every_spelling_of_a_unit_reads_as_its_kind() -> None:
    for kind in KINDS.values():
        assert read_quantity(kind.example, kind.name).kind == kind.measures
        for spelling in kind.spellings():
            assert read_quantity(f"1 {spelling}", kind.name).unit in kind.units


def test_every_unit_can_be_turned_into_its_kin_and_back() -> None:
    for kind in KINDS.values():
        for unit in kind.units:
            for other in kind.units:
                if kind.name == "load" and unit.lstrip("mk") != other.lstrip("mk"):
                    continue
                there = convert(Fraction(7, 3), unit, other)
                assert convert(there, other, unit) == Fraction(7, 3)


def test_importing_and_reading_do_not_wake_pint() -> None:
    code = (
        "import sys, junctionary.units as u;"
        "u.read_quantity('3 ft 6 in', 'length'); u.read_wire_size('14 AWG');"
        "u.read_quantity('1 in', 'length') < u.read_quantity('2 in', 'length');"
        "sys.exit('pint' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


units = st.sampled_from([(kind.name, unit) for kind in KINDS.values() for unit in kind.units])
numbers = st.decimals(min_value=0, max_value=99_999, places=3).map(Fraction)


@settings(deadline=None)  # the first conversion wakes pint
@given(number=numbers, of=units)
def test_what_a_quantity_says_of_itself_reads_back_as_the_same(number: Fraction, of: tuple[str, str]) -> None:
    kind, unit = of
    quantity = Quantity(number, unit, KINDS[kind].measures)
    assert read_quantity(str(quantity), kind) == quantity


@settings(deadline=None)
@given(sixteenths=st.integers(min_value=-20_000, max_value=20_000))
def test_feet_and_inches_read_back_as_the_same_length(sixteenths: int) -> None:
    length = Quantity(Fraction(sixteenths, 16), "in", "length")
    assert read_quantity(feet_and_inches(length), "height") == length


@settings(deadline=None)
@given(
    text=st.text(max_size=80)
    | st.from_regex(r"[-0-9./, ]{1,12} ?[a-zA-Z'\"^3·-]{0,6}", fullmatch=True)
    | st.from_regex(
        r"-?[0-9]{1,4}(?:\.[0-9])? ?(?:in|ft|mm|ft2|in3|kg|A|V|kVA|W|in-lb|F|deg)", fullmatch=True
    )
)
def test_any_text_is_read_or_refused_with_words(text: str) -> None:
    for kind in KINDS:
        try:
            quantity = read_quantity(text, kind)
        except UnitError as refusal:
            error = refusal
        else:
            assert quantity.unit in KINDS[kind].units
            continue
        assert error.found
        assert error.expected
        assert error.do


@pytest.mark.parametrize(
    ("value", "digits", "written"),
    [
        (Fraction("0.125"), 2, "0.13"),
        (Fraction("-0.125"), 2, "-0.13"),
        (Fraction("-0.001"), 2, "0.00"),
        (Fraction(1, 3), 3, "0.333"),
        (Fraction("2.5"), 0, "3"),
        (Fraction("0.1") + Fraction("0.2"), 1, "0.3"),
        (7, 2, "7.00"),
    ],
)
def test_a_number_is_shown_with_fixed_digits_and_no_noise(value: Fraction, digits: int, written: str) -> None:
    assert decimal(value, digits) == written


def test_a_quantity_is_shown_in_the_unit_asked_for() -> None:
    assert show(read_quantity("1-1/2 in", "length"), "mm", 1) == "38.1 mm"
    assert show(Fraction("3.24"), "V", 1) == "3.2 V"


@pytest.mark.parametrize(
    ("text", "imperial", "in_metric"),
    [
        ("42 in", "3 ft 6 in", "1.07 m"),
        ("8 ft", "8 ft", "2.44 m"),
        ("5/8 in", "5/8 in", "16 mm"),
        ("3 ft 6-1/16 in", "3 ft 6-1/16 in", "1.07 m"),
        ("27 mm", "1.06 in", "27 mm"),
        ("304.79 mm", "1 ft", "305 mm"),
        ("-8 ft", "-8 ft", "-2.44 m"),
        ("0 m", "0 in", "0 mm"),
    ],
)
def test_a_length_is_shown_in_either_system(text: str, imperial: str, in_metric: str) -> None:
    length = read_quantity(text, "height")
    assert show_as(length, "imperial") == feet_and_inches(length) == imperial
    assert show_as(length, "metric") == metric(length) == in_metric


def test_other_kinds_are_shown_in_a_houses_own_system() -> None:
    assert show_as(read_quantity("20.3 in3", "volume"), "metric") == "333 cm3"
    assert show_as(read_quantity("20.3 in3", "volume"), "imperial") == "20.3 in3"
    assert show_as(read_quantity("1.6 N m", "torque"), "imperial") == "14.2 in-lb"
    assert show_as(read_quantity("30 C", "temperature"), "imperial") == "86 F"
    assert show_as(read_quantity("20 A", "current"), "metric") == "20 A"


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("14 AWG", "14 AWG"),
        ("14awg", "14 AWG"),
        ("4/0 AWG", "4/0 AWG"),
        ("0 AWG", "1/0 AWG"),
        ("00 AWG", "2/0 AWG"),
        ("250 kcmil", "250 kcmil"),
        ("250 MCM", "250 kcmil"),
    ],
)
def test_a_wire_size_is_read(written: str, name: str) -> None:
    assert str(read_wire_size(written)) == name


@pytest.mark.parametrize(
    ("written", "words"),
    [
        (14, "write 14 AWG"),
        ("#14", "write 14 AWG"),
        ("14 ga", "write 14 AWG"),
        ("2/0", "write 2/0 AWG"),
        ("2.5 mm2", "2.5 mm2 is an area; a wire size is due here"),
        ("50 AWG", "there is no size 50 AWG"),
        ("5/0 AWG", "5/0 AWG is no wire size"),
        ("9000 kcmil", "there is no size 9000 kcmil"),
        ("thick", "thick is no wire size"),
        (None, "None is no wire size"),
    ],
)
def test_what_is_no_wire_size_is_refused_in_plain_words(written: object, words: str) -> None:
    with pytest.raises(UnitError) as caught:
        read_wire_size(written)
    assert words in str(caught.value)


def test_a_wire_size_cannot_be_made_from_an_untidy_name() -> None:
    with pytest.raises(UnitError):
        WireSize("14")


def test_wire_sizes_are_ordered_by_area_and_kept_apart_in_sets() -> None:
    names = ["18 AWG", "14 AWG", "12 AWG", "1 AWG", "1/0 AWG", "4/0 AWG", "250 kcmil", "2000 kcmil"]
    assert [str(size) for size in sorted({WireSize(name) for name in reversed(names)})] == names
    assert WireSize("14 AWG") == read_wire_size("14AWG")


def test_the_gauge_is_fixed_by_its_two_defining_diameters() -> None:
    # ASTM B258: 36 AWG is 0.0050 in, 4/0 AWG is 0.4600 in.
    assert WireSize("36 AWG").circular_mils == pytest.approx(5**2, rel=1e-12)
    assert WireSize("4/0 AWG").circular_mils == pytest.approx(460**2, rel=1e-12)
    assert WireSize("4/0 AWG").diameter_mm == pytest.approx(11.684, rel=1e-12)
    assert WireSize("12 AWG").area_mm2 == pytest.approx(3.309, abs=0.0005)
    assert WireSize("250 kcmil").area_mm2 == pytest.approx(126.677, abs=0.0005)


def test_every_conversion_agrees_with_pints_own_definitions() -> None:
    """Our short list of definitions against the registry that comes with pint, exactly."""
    import pint

    from junctionary.units.quantity import _PINT_NAMES

    general = pint.UnitRegistry(non_int_type=Fraction)
    for kind in KINDS.values():
        units = [unit for unit in kind.units if kind.name != "load" or unit not in ("A", "mA")]
        pairs = [
            (one, other) for one in units for other in units if kind.name != "load" or one[-1] == other[-1]
        ]
        for one, other in pairs:
            there = general.Quantity(Fraction(7), _PINT_NAMES.get(one, one)).to(_PINT_NAMES.get(other, other))
            assert convert(Fraction(7), one, other) == Fraction(there.magnitude), (one, other)


@pytest.mark.parametrize(
    ("one", "other", "printed"),
    [
        ("in-lb", "N m", "0.1129848"),
        ("in3", "cm3", "16.38706"),
        ("ft2", "m2", "0.09290304"),
        ("ft", "m", "0.3048"),
    ],
)
def test_conversions_have_the_factors_of_nist_sp_811(one: str, other: str, printed: str) -> None:
    """NIST SP 811, appendix B: factors as printed."""
    digits = len(printed.split(".")[1])
    assert round(float(convert(Fraction(1), one, other)), digits) == float(printed)


def test_a_codes_figure_is_read_first_in_the_units_of_the_house() -> None:
    six_feet = read_quantity("6 ft", "length")
    assert beside_its_own(six_feet, "metric") == "1.83 m (6 ft)"
    assert beside_its_own(six_feet, "imperial") == "6 ft"
    assert beside_its_own(read_quantity("24 in", "length"), "imperial") == "24 in"
    assert beside_its_own(read_quantity("20 A", "current"), "metric") == "20 A"
