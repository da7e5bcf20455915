//! The table of units: one row a unit (name, dimension, size in the dimension's base, spoken, written forms).
//!
//! Sizes follow from the exact definitions: international inch 25.4 mm, pound 0.45359237 kg, standard gravity
//! 9.80665 m/s2 (NIST SP 811, appendix B.8), US gallon 231 in3.

use super::Dimension::{self, *};
use super::Unit;

/// One unit's facts.
pub(super) struct Row {
    /// The design's name.
    pub name: &'static str,
    /// What it measures.
    pub dimension: Dimension,
    /// Size of one in the dimension's base unit.
    pub size: f64,
    /// Added before scaling; only temperatures have one.
    pub offset: f64,
    /// Spoken, one of it.
    pub one: &'static str,
    /// Spoken, several of it.
    pub many: &'static str,
    /// Other ways to write or say it, in lower case, normalised as `unit_text` does.
    pub written: &'static [&'static str],
}

const INCH: f64 = 25.4;
const G: f64 = 9.806_65;
const POUND: f64 = 0.453_592_37;
const LBF: f64 = POUND * G;
const PSI: f64 = LBF / (INCH * INCH) * 1e6;
const ZERO_C: f64 = 273.15;
const ZERO_F: f64 = 459.67;

macro_rules! units {
    ($($variant:ident $name:literal $dimension:ident $size:expr, $offset:expr, $one:literal / $many:literal, [$($form:literal),*];)*) => {
        impl Unit {
            /// Every unit, in the table's order.
            pub const ALL: &'static [Self] = &[$(Self::$variant),*];

            pub(super) const fn row(self) -> Row {
                match self {
                    $(Self::$variant => Row { name: $name, dimension: $dimension, size: $size, offset: $offset, one: $one, many: $many, written: &[$($form),*] },)*
                }
            }
        }
    };
}

units! {
    NewtonMetre "N.m" Torque 1.0, 0.0, "newton metre" / "newton metres", ["nm", "newton metre", "newton metres", "newton meter", "newton meters", "newtonmetre", "newtonmetres"];
    NewtonMillimetre "N.mm" Torque 0.001, 0.0, "newton millimetre" / "newton millimetres", ["nmm"];
    KilonewtonMetre "kN.m" Torque 1000.0, 0.0, "kilonewton metre" / "kilonewton metres", ["knm"];
    PoundFoot "lbf.ft" Torque LBF * INCH * 12.0 / 1000.0, 0.0, "pound foot" / "foot pounds", ["lbfft", "ftlbf", "ftlb", "ftlbs", "lbft", "lbsft", "foot pound", "foot pounds", "foot pound force", "pound foot", "pounds foot", "pound feet", "pounds feet", "footlbf", "lbffoot", "foot lb", "foot lbs"];
    PoundInch "lbf.in" Torque LBF * INCH / 1000.0, 0.0, "pound inch" / "inch pounds", ["lbfin", "inlbf", "inlb", "inlbs", "lbin", "lbsin", "inch pound", "inch pounds", "pound inch", "pounds inch", "pound inches", "inchlbf", "lbfinch", "inchlb", "inchlbs", "inch lb", "inch lbs"];
    OunceInch "ozf.in" Torque LBF / 16.0 * INCH / 1000.0, 0.0, "ounce inch" / "inch ounces", ["ozfin", "inozf", "ozin", "inoz", "inch ounces", "ounce inches"];
    KilogramMetre "kgf.m" Torque G, 0.0, "kilogram force metre" / "kilogram force metres", ["kgfm", "mkgf", "kgm", "mkg", "kilogram metre", "kilogram metres", "kilo metres", "kpm", "mkp"];
    KilogramCentimetre "kgf.cm" Torque G / 100.0, 0.0, "kilogram force centimetre" / "kilogram force centimetres", ["kgfcm", "cmkgf", "kgcm", "kilogram centimetres"];
    Joule "J" Energy 1.0, 0.0, "joule" / "joules", ["joule", "joules"];
    FootPoundEnergy "ft.lbf-energy" Energy LBF * INCH * 12.0 / 1000.0, 0.0, "foot pound of energy" / "foot pounds of energy", [];

    Newton "N" Force 1.0, 0.0, "newton" / "newtons", ["n", "newton", "newtons"];
    Kilonewton "kN" Force 1000.0, 0.0, "kilonewton" / "kilonewtons", ["kn", "kilonewton", "kilonewtons"];
    PoundForce "lbf" Force LBF, 0.0, "pound force" / "pounds force", ["lbs force", "pound force", "pounds force", "lbsf", "poundforce"];
    KilogramForce "kgf" Force G, 0.0, "kilogram force" / "kilograms force", ["kilogram force", "kilograms force", "kp", "kilopond"];

    Click "click" Clicks 1.0, 0.0, "click" / "clicks", ["clicks", "clk", "clks", "detent", "detents", "notch", "notches"];
    PositionStep "position" Position 1.0, 0.0, "position" / "positions", ["positions", "pos"];
    Turn "turn" Angle 360.0, 0.0, "turn" / "turns", ["turns", "rev", "revs", "revolution", "revolutions"];
    Flat "flat" Angle 60.0, 0.0, "flat" / "flats", ["flats"];
    Degree "deg" Angle 1.0, 0.0, "degree" / "degrees", ["degree", "degrees", "°"];
    Radian "rad" Angle 180.0 / std::f64::consts::PI, 0.0, "radian" / "radians", ["radian", "radians"];

    Millimetre "mm" Length 1.0, 0.0, "millimetre" / "millimetres", ["millimetre", "millimetres", "millimeter", "millimeters"];
    Centimetre "cm" Length 10.0, 0.0, "centimetre" / "centimetres", ["centimetre", "centimetres", "centimeter", "centimeters"];
    Metre "m" Length 1000.0, 0.0, "metre" / "metres", ["metre", "metres", "meter", "meters"];
    Micrometre "um" Length 0.001, 0.0, "micron" / "microns", ["µm", "μm", "micron", "microns", "micrometre", "micrometres", "micrometer"];
    Inch "in" Length INCH, 0.0, "inch" / "inches", ["inch", "inches", "\"", "″"];
    Thou "thou" Length INCH / 1000.0, 0.0, "thou" / "thou", ["thous", "thousandth", "thousandths", "thousandths of an inch"];
    Foot "ft" Length INCH * 12.0, 0.0, "foot" / "feet", ["foot", "feet"];

    SquareMillimetre "mm2" Area 1.0, 0.0, "square millimetre" / "square millimetres", ["mm^2", "mm²", "mm**2", "square millimetre", "square millimetres", "sq mm", "square mm"];
    SquareCentimetre "cm2" Area 100.0, 0.0, "square centimetre" / "square centimetres", ["cm^2", "cm²", "cm**2", "square centimetres", "sq cm"];
    SquareMetre "m2" Area 1e6, 0.0, "square metre" / "square metres", ["m^2", "m²", "m**2", "square metres"];
    SquareInch "in2" Area INCH * INCH, 0.0, "square inch" / "square inches", ["in^2", "in²", "in**2", "inch2", "inch^2", "inch**2", "square inch", "square inches", "sq in"];

    Millilitre "ml" Volume 1.0, 0.0, "millilitre" / "millilitres", ["cc", "ccs", "cm3", "cm^3", "cm³", "cm**3", "c c", "millilitre", "millilitres", "milliliter", "milliliters", "mils of oil"];
    Litre "l" Volume 1000.0, 0.0, "litre" / "litres", ["litre", "litres", "liter", "liters", "dm3"];
    CubicMillimetre "mm3" Volume 0.001, 0.0, "cubic millimetre" / "cubic millimetres", ["mm^3", "mm³", "mm**3", "cubic millimetres", "cubic mm"];
    CubicMetre "m3" Volume 1e6, 0.0, "cubic metre" / "cubic metres", ["m^3", "m³", "m**3", "cubic metres"];
    CubicInch "in3" Volume INCH * INCH * INCH / 1000.0, 0.0, "cubic inch" / "cubic inches", ["in^3", "in³", "in**3", "inch3", "inch^3", "inch**3", "cubic inch", "cubic inches", "cu in"];
    Quart "qt" Volume INCH * INCH * INCH / 1000.0 * 231.0 / 4.0, 0.0, "US quart" / "US quarts", ["quart", "quarts", "us quart", "us quarts", "us_liquid_quart", "us qt", "us liquid quart"];
    FluidOunce "fl_oz" Volume INCH * INCH * INCH / 1000.0 * 231.0 / 128.0, 0.0, "US fluid ounce" / "US fluid ounces", ["floz", "fl oz", "us fl oz", "us fluid ounce", "us fluid ounces", "us_fluid_ounce", "fluid_ounce"];

    MillimetreFourth "mm4" SecondMoment 1.0, 0.0, "millimetre to the fourth" / "millimetres to the fourth", ["mm^4", "mm⁴", "mm**4"];
    InchFourth "in4" SecondMoment INCH * INCH * INCH * INCH, 0.0, "inch to the fourth" / "inches to the fourth", ["in^4", "in⁴", "in**4"];

    Pascal "Pa" Pressure 1.0, 0.0, "pascal" / "pascals", ["pa", "pascal", "pascals", "n/m2", "n/m^2"];
    Kilopascal "kPa" Pressure 1e3, 0.0, "kilopascal" / "kilopascals", ["kpa", "kilopascal", "kilopascals"];
    Megapascal "MPa" Pressure 1e6, 0.0, "megapascal" / "megapascals", ["megapascal", "megapascals", "n/mm2", "n/mm^2", "n/mm²", "n/mm**2", "newtons per square millimetre"];
    Gigapascal "GPa" Pressure 1e9, 0.0, "gigapascal" / "gigapascals", ["gpa", "gigapascals"];
    Bar "bar" Pressure 1e5, 0.0, "bar" / "bar", ["bars"];
    Millibar "mbar" Pressure 100.0, 0.0, "millibar" / "millibar", ["millibar", "millibars", "hpa"];
    Psi "psi" Pressure PSI, 0.0, "p s i" / "p s i", ["p s i", "lbf/in2", "lbf/in^2", "lbf/in²", "lb/in2", "lb/in²", "pounds per square inch", "pound per square inch", "p.s.i."];
    KilopoundSquareInch "ksi" Pressure PSI * 1000.0, 0.0, "k s i" / "k s i", ["k s i", "kpsi"];
    Atmosphere "atm" Pressure 101_325.0, 0.0, "atmosphere" / "atmospheres", ["atmosphere", "atmospheres"];
    KilogramSquareCentimetre "kgf/cm2" Pressure G * 1e4, 0.0, "kilogram per square centimetre" / "kilograms per square centimetre", ["kgf/cm^2", "kgf/cm²", "kg/cm2", "kg/cm²", "kilograms per square centimetre"];

    Celsius "degC" Temperature 1.0, ZERO_C, "degree Celsius" / "degrees Celsius", ["°c", "c", "celsius", "deg c", "degree celsius", "degrees celsius", "degree c", "degrees c", "centigrade", "degrees centigrade"];
    Fahrenheit "degF" Temperature 5.0 / 9.0, ZERO_F, "degree Fahrenheit" / "degrees Fahrenheit", ["°f", "f", "fahrenheit", "deg f", "degree fahrenheit", "degrees fahrenheit", "degrees f"];
    Kelvin "K" Temperature 1.0, 0.0, "kelvin" / "kelvin", ["kelvin", "kelvins"];
    DeltaCelsius "delta_degC" TemperatureDifference 1.0, 0.0, "degree Celsius of difference" / "degrees Celsius of difference", ["delta degc", "deltadegc", "delta c", "Δ°c", "degrees celsius of difference"];
    DeltaKelvin "delta_K" TemperatureDifference 1.0, 0.0, "kelvin of difference" / "kelvin of difference", ["delta k", "deltak", "Δk"];
    DeltaFahrenheit "delta_degF" TemperatureDifference 5.0 / 9.0, 0.0, "degree Fahrenheit of difference" / "degrees Fahrenheit of difference", ["delta degf", "deltadegf", "delta f", "Δ°f"];

    Kilogram "kg" Mass 1.0, 0.0, "kilogram" / "kilograms", ["kilogram", "kilograms", "kilo", "kilos", "kgs"];
    Gram "g" Mass 0.001, 0.0, "gram" / "grams", ["gram", "grams", "gramme", "grammes"];
    Pound "lb" Mass POUND, 0.0, "pound" / "pounds", ["lbs", "pound", "pounds"];
    Ounce "oz" Mass POUND / 16.0, 0.0, "ounce" / "ounces", ["ounce", "ounces"];
    KilogramCubicMetre "kg/m3" Density 1.0, 0.0, "kilogram per cubic metre" / "kilograms per cubic metre", ["kg/m^3", "kg/m³", "kilograms per cubic metre", "g/l"];
    GramMillilitre "g/ml" Density 1000.0, 0.0, "gram per millilitre" / "grams per millilitre", ["g/cc", "g/cm3", "g/cm³", "kg/l", "grams per millilitre"];

    NewtonPerMillimetre "N/mm" Rate 1000.0, 0.0, "newton per millimetre" / "newtons per millimetre", ["n/mm", "kn/m", "newton per millimetre", "newtons per millimetre", "newtons per mm", "newtons a millimetre", "newtons per mil", "newton a millimetre"];
    NewtonPerMetre "N/m" Rate 1.0, 0.0, "newton per metre" / "newtons per metre", ["n/m", "newtons per metre"];
    PoundPerInch "lbf/in" Rate LBF / INCH * 1000.0, 0.0, "pound per inch" / "pounds per inch", ["lbf/inch", "lb/in", "lbs/in", "lb/inch", "lbs/inch", "pound per inch", "pounds per inch", "pounds an inch", "pound an inch", "lbs per inch", "lb per inch", "lbf per inch", "ppi"];
    KilogramPerMillimetre "kgf/mm" Rate G * 1000.0, 0.0, "kilogram per millimetre" / "kilograms per millimetre", ["kg/mm", "kilogram per millimetre", "kilograms per millimetre", "kilos per millimetre", "kilograms a millimetre", "kilos a millimetre", "kilos per mil"];

    MillimetrePerSecond "mm/s" Speed 0.001, 0.0, "millimetre per second" / "millimetres per second", ["mm/sec", "mm/second", "millimetres per second", "millimetre per second", "mm per second", "millimetres a second"];
    MetrePerSecond "m/s" Speed 1.0, 0.0, "metre per second" / "metres per second", ["m/sec", "m/second", "metres per second", "metre per second", "metres a second"];
    InchPerSecond "in/s" Speed INCH / 1000.0, 0.0, "inch per second" / "inches per second", ["in/sec", "inch/s", "inch/second", "inches/second", "inch per second", "inches per second", "inches a second", "ips"];
    FootPerSecond "ft/s" Speed INCH * 12.0 / 1000.0, 0.0, "foot per second" / "feet per second", ["ft/sec", "feet per second"];
    KilometrePerHour "km/h" Speed 1.0 / 3.6, 0.0, "kilometre per hour" / "kilometres per hour", ["kph", "kmh", "kilometres per hour"];

    Centistokes "mm2/s" KinematicViscosity 1.0, 0.0, "centistoke" / "centistokes", ["cst", "mm^2/s", "mm²/s", "mm**2/s", "centistoke", "centistokes", "square millimetres per second", "mm2/sec"];
    SquareMetrePerSecond "m2/s" KinematicViscosity 1e6, 0.0, "square metre per second" / "square metres per second", ["m^2/s", "m²/s", "m**2/s", "square metres per second"];
    Stokes "St" KinematicViscosity 100.0, 0.0, "stoke" / "stokes", ["st", "stokes", "stoke"];
    PascalSecond "Pa.s" DynamicViscosity 1.0, 0.0, "pascal second" / "pascal seconds", ["pas", "pascal second", "pascal seconds", "n.s/m2"];
    MillipascalSecond "mPa.s" DynamicViscosity 0.001, 0.0, "millipascal second" / "millipascal seconds", ["millipascal seconds"];
    Poise "P" DynamicViscosity 0.1, 0.0, "poise" / "poise", ["poise"];
    Centipoise "cP" DynamicViscosity 0.001, 0.0, "centipoise" / "centipoise", ["cp", "centipoise"];

    NewtonSecondPerMetre "N.s/m" Damping 1.0, 0.0, "newton second per metre" / "newton seconds per metre", ["ns/m", "newton seconds per metre", "newton second per metre", "n/(m/s)", "n s/m"];
    NewtonSecondPerMillimetre "N.s/mm" Damping 1000.0, 0.0, "newton second per millimetre" / "newton seconds per millimetre", ["ns/mm", "newton seconds per millimetre", "n/(mm/s)", "n s/mm"];
    PoundSecondPerInch "lbf.s/in" Damping LBF / INCH * 1000.0, 0.0, "pound second per inch" / "pound seconds per inch", ["lbfs/in", "lbs.s/in", "lb.s/in", "lbfs/inch", "lb s/in", "pound seconds per inch", "lbf s/in"];

    Hertz "Hz" Frequency 1.0, 0.0, "hertz" / "hertz", ["hz", "hertz", "cycles per second", "cps", "cycles a second", "1/s"];
    Rpm "rpm" Frequency 1.0 / 60.0, 0.0, "r p m" / "r p m", ["r p m", "rev/min", "r/min", "revs per minute", "1/min", "cpm", "cycles per minute"];
    RadianPerSecond "rad/s" AngularSpeed 1.0, 0.0, "radian per second" / "radians per second", ["rad/sec", "radians per second", "radian/s", "radian/second", "radians/s"];
    DegreePerSecond "deg/s" AngularSpeed std::f64::consts::PI / 180.0, 0.0, "degree per second" / "degrees per second", ["degrees per second"];

    Second "s" Time 1.0, 0.0, "second" / "seconds", ["sec", "secs", "second", "seconds"];
    Minute "min" Time 60.0, 0.0, "minute" / "minutes", ["mins", "minute", "minutes"];
    Hour "h" Time 3600.0, 0.0, "hour" / "hours", ["hr", "hrs", "hour", "hours"];
    Day "day" Time 86_400.0, 0.0, "day" / "days", ["days"];
    Month "month" Time 2_629_800.0, 0.0, "month" / "months", ["months"];

    PerKelvin "1/K" Expansion 1.0, 0.0, "per kelvin" / "per kelvin", ["/k", "1/degc", "per k", "per kelvin", "1/°c", "per degree celsius", "/degc"];
    Percent "%" Pure 0.01, 0.0, "per cent" / "per cent", ["percent", "per cent", "pct"];
    One "one" Pure 1.0, 0.0, "" / "", ["dimensionless", "ratio"];
}
