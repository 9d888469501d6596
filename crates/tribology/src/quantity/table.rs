//! The one table of units, from which the kinds, the newtypes with their doors, and [`UNITS`] are born.
//!
//! Read the list at the end of the file: a kind, then its units, base SI unit first. A row reads: the two doors if the
//! newtype has them, the printed symbol, other spellings, and its scale: base SI units in one (`times`) or ones in a base
//! SI unit (`over`), whichever is the exact number.
//! `month`, `use`, `drop` and `stroke` are words of the shop and not units.

use super::unit::{over, times};
use super::{Quantity, Unit};
use std::fmt;

macro_rules! quantities {
    ($(
        $(#[$about:meta])*
        $kind:ident, $name:literal, $example:literal {
            $( $(($from:ident, $get:ident))? $symbol:literal, [$($also:literal),*], $scale:expr; )+
        }
    )+) => {
        /// What a quantity measures.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Kind {
            $( $(#[$about])* $kind, )+
        }

        impl Kind {
            /// Every kind, in the order of the table.
            pub const ALL: &[Kind] = &[$(Kind::$kind),+];

            /// The kind in plain words, as in "a length".
            ///
            /// - returns: lower case, without an article.
            #[must_use]
            pub fn name(self) -> &'static str {
                match self { $(Kind::$kind => $name),+ }
            }

            /// How such a quantity may be typed.
            ///
            /// - returns: a number with its unit, in plain keyboard signs where there are any.
            #[must_use]
            pub fn example(self) -> &'static str {
                match self { $(Kind::$kind => $example),+ }
            }

            /// The base SI unit in which the newtype keeps its number.
            ///
            /// - returns: the printed symbol.
            #[must_use]
            pub fn si_symbol(self) -> &'static str {
                match self { $(Kind::$kind => [$($symbol),+][0]),+ }
            }
        }

        /// Every unit that may be typed or said, kind by kind, the base SI unit of each kind first.
        pub static UNITS: &[Unit] = &[$($(
            Unit {
                kind: Kind::$kind,
                symbol: $symbol,
                also: &[$($also),*],
                scale: $scale,
            },
        )+)+];

        $(
            $(#[$about])*
            #[derive(Clone, Copy, PartialEq, PartialOrd)]
            pub struct $kind(f64);

            impl Quantity for $kind {
                const KIND: Kind = Kind::$kind;

                fn from_si(si: f64) -> Self {
                    Self(si)
                }

                fn si(self) -> f64 {
                    self.0
                }
            }

            impl $kind {
                $($(
                    #[doc = concat!("From a number of ", $symbol, ".")]
                    #[must_use]
                    pub const fn $from(number: f64) -> Self {
                        Self($scale.apply(number))
                    }

                    #[doc = concat!("The number of ", $symbol, ".")]
                    #[must_use]
                    pub const fn $get(self) -> f64 {
                        $scale.undo(self.0)
                    }
                )?)+
            }

            impl fmt::Debug for $kind {
                fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                    write!(f, "{} {}", self.0, Kind::$kind.si_symbol())
                }
            }
        )+
    };
}

/// Metres in an inch, exact.
///
/// Source: `nist-sp-811`, appendix B.8.
const INCH: f64 = 0.0254;
/// Metres in a foot, exact.
///
/// Source: `nist-sp-811`, appendix B.8.
const FOOT: f64 = 0.3048;
/// Kilograms in an avoirdupois pound, exact.
///
/// Source: `nist-sp-811`, appendix B.8.
const POUND: f64 = 0.453_592_37;
/// Standard acceleration of free fall in m/s², exact.
///
/// Source: `nist-sp-811`, appendix B.8.
const GRAVITY: f64 = 9.806_65;
/// Newtons in a pound-force: a pound in standard gravity.
const POUND_FORCE: f64 = POUND * GRAVITY;
/// Cubic metres in a US gallon, 231 cubic inches, exact.
///
/// Source: `nist-hb-44`, appendix C.
const US_GALLON: f64 = 3.785_411_784e-3;
/// Cubic metres in an imperial gallon, exact.
///
/// Source: `weights-and-measures-act-1985`, schedule 1.
const UK_GALLON: f64 = 4.546_09e-3;
/// Seconds in a minute.
const MINUTE: f64 = 60.0;
/// Seconds in an hour.
const HOUR: f64 = 3600.0;

quantities! {
    /// A length.
    Length, "length", "12 mm" {
        (from_m, m) "m", ["metre", "metres", "meter", "meters"], times(1.0);
        (from_mm, mm) "mm", ["millimetre", "millimetres", "millimeter", "millimeters"], over(1e3);
        (from_cm, cm) "cm", ["centimetre", "centimetres", "centimeter", "centimeters"], over(1e2);
        (from_um, um) "µm", ["micron", "microns", "micrometre", "micrometres", "micrometer", "micrometers"], over(1e6);
        (from_inches, inches) "in", ["inch", "inches", "\""], times(INCH);
        "ft", ["foot", "feet", "'"], times(FOOT);
        "thou", ["mil", "mils"], times(INCH / 1000.0);
    }

    /// An area.
    Area, "area", "180 cm2" {
        (from_m2, m2) "m²", ["sq m"], times(1.0);
        (from_mm2, mm2) "mm²", ["sq mm"], over(1e6);
        (from_cm2, cm2) "cm²", ["sq cm"], over(1e4);
        (from_in2, in2) "in²", ["sq in", "square inch", "square inches"], times(INCH * INCH);
        "ft²", ["sq ft", "square foot", "square feet"], times(FOOT * FOOT);
    }

    /// A volume.
    Volume, "volume", "3.5 L" {
        (from_m3, m3) "m³", ["cubic metre", "cubic metres"], times(1.0);
        (from_litres, litres) "L", ["litre", "litres", "liter", "liters", "dm3"], over(1e3);
        (from_ml, ml) "mL", ["cc", "cm3", "ccm", "millilitre", "millilitres", "milliliter", "milliliters"], over(1e6);
        (from_ul, ul) "µL", ["mm3", "microlitre", "microlitres", "microliter", "microliters"], over(1e9);
        "in³", ["cu in", "cubic inch", "cubic inches"], times(INCH * INCH * INCH);
        "US fl oz", ["fl oz US", "US fluid ounce", "US fluid ounces", "fluid ounce US", "fluid ounces US"], times(US_GALLON / 128.0);
        "US pint", ["pint US", "US pints", "pints US", "US pt", "pt US"], times(US_GALLON / 8.0);
        "US quart", ["quart US", "US quarts", "quarts US", "US qt", "qt US"], times(US_GALLON / 4.0);
        "US gallon", ["gallon US", "US gallons", "gallons US", "US gal", "gal US"], times(US_GALLON);
        "UK fl oz", ["fl oz UK", "UK fluid ounce", "UK fluid ounces", "fluid ounce UK", "fluid ounces UK", "imperial fl oz",
            "imp fl oz", "fl oz imperial", "fl oz imp", "imperial fluid ounce", "imperial fluid ounces"], times(UK_GALLON / 160.0);
        "UK pint", ["pint UK", "UK pints", "pints UK", "UK pt", "pt UK", "imperial pint", "imperial pints", "imp pint",
            "imp pints", "pint imperial", "pints imperial", "imp pt"], times(UK_GALLON / 8.0);
        "UK quart", ["quart UK", "UK quarts", "quarts UK", "UK qt", "qt UK", "imperial quart", "imperial quarts", "imp quart",
            "imp quarts", "quart imperial", "quarts imperial", "imp qt"], times(UK_GALLON / 4.0);
        "UK gallon", ["gallon UK", "UK gallons", "gallons UK", "UK gal", "gal UK", "imperial gallon", "imperial gallons",
            "imp gallon", "imp gallons", "gallon imperial", "gallons imperial", "imp gal"], times(UK_GALLON);
    }

    /// A mass.
    Mass, "mass", "2 kg" {
        (from_kg, kg) "kg", ["kilogram", "kilograms", "kilo", "kilos"], times(1.0);
        (from_g, g) "g", ["gram", "grams", "gramme", "grammes"], over(1e3);
        "lb", ["lbs", "pound", "pounds", "lbm"], times(POUND);
        "oz", ["ounce", "ounces"], times(POUND / 16.0);
    }

    /// A span of time.
    Time, "time", "4 h" {
        (from_seconds, seconds) "s", ["sec", "secs", "second", "seconds"], times(1.0);
        (from_minutes, minutes) "min", ["mins", "minute", "minutes"], times(MINUTE);
        (from_hours, hours) "h", ["hr", "hrs", "hour", "hours"], times(HOUR);
        (from_days, days) "day", ["days", "d"], times(24.0 * HOUR);
        "week", ["weeks", "wk", "wks"], times(7.0 * 24.0 * HOUR);
    }

    /// A speed of turning or a rate of strokes or drops, in whole turns (not radians) per second.
    Rotation, "speed of turning", "1800 rpm" {
        (from_per_second, per_second) "/s", ["1/s", "per s", "per second", "s^-1", "rev/s", "r/s", "rps", "Hz", "strokes/s"], times(1.0);
        (from_rpm, rpm) "rpm", ["rev/min", "revs/min", "r/min"], over(MINUTE);
        (from_per_minute, per_minute) "/min", ["1/min", "per min", "per minute", "min^-1", "strokes/min", "stroke/min"], over(MINUTE);
    }

    /// A speed along a path.
    Velocity, "speed", "5 m/s" {
        (from_m_s, m_s) "m/s", [], times(1.0);
        (from_mm_s, mm_s) "mm/s", [], over(1e3);
        "m/min", [], over(MINUTE);
        "mm/min", [], over(1e3 * MINUTE);
        "ft/s", ["fps"], times(FOOT);
        "ft/min", ["fpm", "sfm"], times(FOOT / MINUTE);
        "in/s", ["ips"], times(INCH);
        "in/min", ["ipm"], times(INCH / MINUTE);
    }

    /// An acceleration, such as that of free fall.
    Acceleration, "acceleration", "9.81 m/s2" {
        (from_m_s2, m_s2) "m/s²", [], times(1.0);
        "ft/s²", [], times(FOOT);
    }

    /// How often something happens by chance or use, in events to a span of time.
    EventRate, "rate of events", "0.5 per day" {
        (from_per_second, per_second) "per s", ["events/s"], times(1.0);
        (from_per_hour, per_hour) "per h", ["/h", "1/h", "per hour", "events/h"], over(HOUR);
        "per day", ["/day", "1/day", "events/day"], over(24.0 * HOUR);
        "per week", ["/week", "1/week", "events/week"], over(7.0 * 24.0 * HOUR);
    }

    /// A force.
    Force, "force", "2 kN" {
        (from_n, n) "N", ["newton", "newtons"], times(1.0);
        (from_kn, kn) "kN", ["kilonewton", "kilonewtons"], times(1e3);
        "lbf", ["lbsf", "pound-force"], times(POUND_FORCE);
        "kgf", ["kp"], times(GRAVITY);
    }

    /// A turning moment.
    Torque, "torque", "15 N.m" {
        (from_n_m, n_m) "N·m", [], times(1.0);
        (from_n_mm, n_mm) "N·mm", [], over(1e3);
        "lbf·ft", ["ft.lbf", "lb.ft", "ft.lb"], times(POUND_FORCE * FOOT);
        "lbf·in", ["in.lbf", "lb.in", "in.lb"], times(POUND_FORCE * INCH);
        "kgf·m", [], times(GRAVITY);
    }

    /// A difference of pressure, or a pressure above that of the air (gauge pressure); never an absolute pressure.
    Pressure, "pressure", "0.2 bar" {
        (from_pa, pa) "Pa", ["N/m2", "pascal", "pascals"], times(1.0);
        (from_kpa, kpa) "kPa", [], times(1e3);
        (from_mpa, mpa) "MPa", ["N/mm2"], times(1e6);
        (from_gpa, gpa) "GPa", ["kN/mm2"], times(1e9);
        (from_bar, bar) "bar", ["bars"], times(1e5);
        (from_psi, psi) "psi", ["lbf/in2", "lb/in2", "psig", "lbf/sq in", "lb/sq in"], times(POUND_FORCE / (INCH * INCH));
        "kgf/cm²", ["kg/cm2"], times(GRAVITY * 1e4);
        "mmH₂O", ["mmH2O", "mmWG", "mm water"], times(GRAVITY);
        "inH₂O", ["inH2O", "inWG", "in water"], times(GRAVITY * 25.4);
    }

    /// A temperature: a point on the scale.
    Temperature, "temperature", "40 C" {
        (from_kelvin, kelvin) "K", ["kelvin"], times(1.0);
        (from_celsius, celsius) "°C", ["C", "deg C", "degree C", "degrees C", "celsius", "degrees celsius"], times(1.0).above(273.15);
        (from_fahrenheit, fahrenheit) "°F", ["F", "deg F", "degree F", "degrees F", "fahrenheit", "degrees fahrenheit"], over(1.8).above(459.67);
    }

    /// A difference between two temperatures.
    TemperatureDifference, "temperature difference", "10 K" {
        (from_kelvin, kelvin) "K", ["kelvin"], times(1.0);
        "°C", ["C", "deg C", "degree C", "degrees C"], times(1.0);
        "°F", ["F", "deg F", "degree F", "degrees F"], over(1.8);
    }

    /// A kinematic viscosity.
    KinematicViscosity, "kinematic viscosity", "46 mm2/s" {
        (from_m2_s, m2_s) "m²/s", [], times(1.0);
        (from_mm2_s, mm2_s) "mm²/s", [], over(1e6);
        "cSt", ["centistoke", "centistokes"], over(1e6);
        "St", ["stoke", "stokes", "cm2/s"], over(1e4);
    }

    /// A dynamic viscosity.
    DynamicViscosity, "dynamic viscosity", "25 mPa.s" {
        (from_pa_s, pa_s) "Pa·s", ["N.s/m2"], times(1.0);
        (from_mpa_s, mpa_s) "mPa·s", [], over(1e3);
        "cP", ["centipoise", "cPs"], over(1e3);
        "P", ["poise"], over(10.0);
    }

    /// A density.
    Density, "density", "875 kg/m3" {
        (from_kg_m3, kg_m3) "kg/m³", ["g/L"], times(1.0);
        "g/cm³", ["g/mL", "g/cc", "kg/L", "kg/dm3"], times(1e3);
        "lb/ft³", ["lb/cu ft"], times(POUND / (FOOT * FOOT * FOOT));
    }

    /// A flow by volume.
    VolumeFlow, "flow", "12 mL/min" {
        (from_m3_s, m3_s) "m³/s", [], times(1.0);
        (from_ml_s, ml_s) "mL/s", ["cc/s", "cm3/s"], over(1e6);
        (from_ml_min, ml_min) "mL/min", ["cc/min", "cm3/min"], over(1e6 * MINUTE);
        (from_ml_h, ml_h) "mL/h", ["mL/hr", "cc/h", "cc/hr", "cm3/h"], over(1e6 * HOUR);
        (from_l_min, l_min) "L/min", ["lpm"], over(1e3 * MINUTE);
        "L/h", ["L/hr"], over(1e3 * HOUR);
        "µL/min", ["mm3/min"], over(1e9 * MINUTE);
        "in³/min", ["cu in/min"], times(INCH * INCH * INCH / MINUTE);
        "US gal/min", ["US gpm", "gpm US"], times(US_GALLON / MINUTE);
        "UK gal/min", ["UK gpm", "gpm UK", "imp gal/min", "imp gpm"], times(UK_GALLON / MINUTE);
        "US fl oz/h", ["US fl oz/hr"], times(US_GALLON / 128.0 / HOUR);
    }

    /// A load along a line of contact.
    LineLoad, "load along a line", "100 N/mm" {
        (from_n_per_m, n_per_m) "N/m", [], times(1.0);
        (from_n_per_mm, n_per_mm) "N/mm", [], times(1e3);
        "kN/m", [], times(1e3);
        "lbf/in", ["lb/in"], times(POUND_FORCE / INCH);
    }

    /// A surface tension, or the tension between two liquids.
    SurfaceTension, "surface tension", "31 mN/m" {
        (from_j_m2, j_m2) "J/m²", ["N/m"], times(1.0);
        (from_mn_m, mn_m) "mN/m", ["mJ/m2", "dyn/cm", "dyne/cm"], over(1e3);
    }

    /// How fast viscosity grows with pressure (the exponent of the Barus law).
    PressureViscosity, "pressure-viscosity coefficient", "20/GPa" {
        (from_per_pa, per_pa) "/Pa", ["1/Pa", "Pa^-1", "m2/N"], times(1.0);
        (from_per_gpa, per_gpa) "/GPa", ["1/GPa", "GPa^-1"], over(1e9);
        "/MPa", ["1/MPa", "MPa^-1", "mm2/N"], over(1e6);
        "in²/lbf", ["/psi", "1/psi"], times(INCH * INCH / POUND_FORCE);
    }

    /// A power.
    Power, "power", "40 W" {
        (from_w, w) "W", ["watt", "watts"], times(1.0);
        (from_kw, kw) "kW", ["kilowatt", "kilowatts"], times(1e3);
        "hp", ["horsepower"], times(550.0 * FOOT * POUND_FORCE);
    }

    /// How much heat a surface gives off for its size and for how much warmer it is than the air.
    HeatTransfer, "heat transfer coefficient", "18 W/m2K" {
        (from_w_m2_k, w_m2_k) "W/(m²·K)", ["W/m2/K"], times(1.0);
    }

    /// A plane angle.
    Angle, "angle", "120 deg" {
        (from_radians, radians) "rad", ["radian", "radians"], times(1.0);
        (from_degrees, degrees) "°", ["deg", "degree", "degrees"], times(std::f64::consts::PI / 180.0);
    }
}
