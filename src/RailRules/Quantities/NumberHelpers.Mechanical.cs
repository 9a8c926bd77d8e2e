using UnitsNet;

namespace RailRules;

/// <summary>Number helpers for time, geometry, temperature and ratio: <c>54.Volts()</c>. A minus sign needs brackets: <c>(-5).Celsius()</c>.</summary>
public static partial class Quantities
{
    /// <summary>A duration of <paramref name="value"/> nanoseconds.</summary>
    public static Duration Nanoseconds(this int value) => Duration.FromNanoseconds(value);
    /// <summary>A duration of <paramref name="value"/> nanoseconds.</summary>
    public static Duration Nanoseconds(this long value) => Duration.FromNanoseconds(value);
    /// <summary>A duration of <paramref name="value"/> nanoseconds.</summary>
    public static Duration Nanoseconds(this double value) => Duration.FromNanoseconds(value);
    /// <summary>A duration of <paramref name="value"/> nanoseconds.</summary>
    public static Duration Nanoseconds(this decimal value) => Duration.FromNanoseconds(value);

    /// <summary>A duration of <paramref name="value"/> microseconds.</summary>
    public static Duration Microseconds(this int value) => Duration.FromMicroseconds(value);
    /// <summary>A duration of <paramref name="value"/> microseconds.</summary>
    public static Duration Microseconds(this long value) => Duration.FromMicroseconds(value);
    /// <summary>A duration of <paramref name="value"/> microseconds.</summary>
    public static Duration Microseconds(this double value) => Duration.FromMicroseconds(value);
    /// <summary>A duration of <paramref name="value"/> microseconds.</summary>
    public static Duration Microseconds(this decimal value) => Duration.FromMicroseconds(value);

    /// <summary>A duration of <paramref name="value"/> milliseconds.</summary>
    public static Duration Milliseconds(this int value) => Duration.FromMilliseconds(value);
    /// <summary>A duration of <paramref name="value"/> milliseconds.</summary>
    public static Duration Milliseconds(this long value) => Duration.FromMilliseconds(value);
    /// <summary>A duration of <paramref name="value"/> milliseconds.</summary>
    public static Duration Milliseconds(this double value) => Duration.FromMilliseconds(value);
    /// <summary>A duration of <paramref name="value"/> milliseconds.</summary>
    public static Duration Milliseconds(this decimal value) => Duration.FromMilliseconds(value);

    /// <summary>A duration of <paramref name="value"/> seconds.</summary>
    public static Duration Seconds(this int value) => Duration.FromSeconds(value);
    /// <summary>A duration of <paramref name="value"/> seconds.</summary>
    public static Duration Seconds(this long value) => Duration.FromSeconds(value);
    /// <summary>A duration of <paramref name="value"/> seconds.</summary>
    public static Duration Seconds(this double value) => Duration.FromSeconds(value);
    /// <summary>A duration of <paramref name="value"/> seconds.</summary>
    public static Duration Seconds(this decimal value) => Duration.FromSeconds(value);

    /// <summary>A duration of <paramref name="value"/> minutes.</summary>
    public static Duration Minutes(this int value) => Duration.FromMinutes(value);
    /// <summary>A duration of <paramref name="value"/> minutes.</summary>
    public static Duration Minutes(this long value) => Duration.FromMinutes(value);
    /// <summary>A duration of <paramref name="value"/> minutes.</summary>
    public static Duration Minutes(this double value) => Duration.FromMinutes(value);
    /// <summary>A duration of <paramref name="value"/> minutes.</summary>
    public static Duration Minutes(this decimal value) => Duration.FromMinutes(value);

    /// <summary>A duration of <paramref name="value"/> hours.</summary>
    public static Duration Hours(this int value) => Duration.FromHours(value);
    /// <summary>A duration of <paramref name="value"/> hours.</summary>
    public static Duration Hours(this long value) => Duration.FromHours(value);
    /// <summary>A duration of <paramref name="value"/> hours.</summary>
    public static Duration Hours(this double value) => Duration.FromHours(value);
    /// <summary>A duration of <paramref name="value"/> hours.</summary>
    public static Duration Hours(this decimal value) => Duration.FromHours(value);

    /// <summary>A duration of <paramref name="value"/> days.</summary>
    public static Duration Days(this int value) => Duration.FromDays(value);
    /// <summary>A duration of <paramref name="value"/> days.</summary>
    public static Duration Days(this long value) => Duration.FromDays(value);
    /// <summary>A duration of <paramref name="value"/> days.</summary>
    public static Duration Days(this double value) => Duration.FromDays(value);
    /// <summary>A duration of <paramref name="value"/> days.</summary>
    public static Duration Days(this decimal value) => Duration.FromDays(value);

    /// <summary>A length of <paramref name="value"/> micrometers.</summary>
    public static Length Micrometers(this int value) => Length.FromMicrometers(value);
    /// <summary>A length of <paramref name="value"/> micrometers.</summary>
    public static Length Micrometers(this long value) => Length.FromMicrometers(value);
    /// <summary>A length of <paramref name="value"/> micrometers.</summary>
    public static Length Micrometers(this double value) => Length.FromMicrometers(value);
    /// <summary>A length of <paramref name="value"/> micrometers.</summary>
    public static Length Micrometers(this decimal value) => Length.FromMicrometers(value);

    /// <summary>A length of <paramref name="value"/> millimeters.</summary>
    public static Length Millimeters(this int value) => Length.FromMillimeters(value);
    /// <summary>A length of <paramref name="value"/> millimeters.</summary>
    public static Length Millimeters(this long value) => Length.FromMillimeters(value);
    /// <summary>A length of <paramref name="value"/> millimeters.</summary>
    public static Length Millimeters(this double value) => Length.FromMillimeters(value);
    /// <summary>A length of <paramref name="value"/> millimeters.</summary>
    public static Length Millimeters(this decimal value) => Length.FromMillimeters(value);

    /// <summary>A length of <paramref name="value"/> centimeters.</summary>
    public static Length Centimeters(this int value) => Length.FromCentimeters(value);
    /// <summary>A length of <paramref name="value"/> centimeters.</summary>
    public static Length Centimeters(this long value) => Length.FromCentimeters(value);
    /// <summary>A length of <paramref name="value"/> centimeters.</summary>
    public static Length Centimeters(this double value) => Length.FromCentimeters(value);
    /// <summary>A length of <paramref name="value"/> centimeters.</summary>
    public static Length Centimeters(this decimal value) => Length.FromCentimeters(value);

    /// <summary>A length of <paramref name="value"/> meters.</summary>
    public static Length Meters(this int value) => Length.FromMeters(value);
    /// <summary>A length of <paramref name="value"/> meters.</summary>
    public static Length Meters(this long value) => Length.FromMeters(value);
    /// <summary>A length of <paramref name="value"/> meters.</summary>
    public static Length Meters(this double value) => Length.FromMeters(value);
    /// <summary>A length of <paramref name="value"/> meters.</summary>
    public static Length Meters(this decimal value) => Length.FromMeters(value);

    /// <summary>A area of <paramref name="value"/> square millimeters.</summary>
    public static Area SquareMillimeters(this int value) => Area.FromSquareMillimeters(value);
    /// <summary>A area of <paramref name="value"/> square millimeters.</summary>
    public static Area SquareMillimeters(this long value) => Area.FromSquareMillimeters(value);
    /// <summary>A area of <paramref name="value"/> square millimeters.</summary>
    public static Area SquareMillimeters(this double value) => Area.FromSquareMillimeters(value);
    /// <summary>A area of <paramref name="value"/> square millimeters.</summary>
    public static Area SquareMillimeters(this decimal value) => Area.FromSquareMillimeters(value);

    /// <summary>A area of <paramref name="value"/> square centimeters.</summary>
    public static Area SquareCentimeters(this int value) => Area.FromSquareCentimeters(value);
    /// <summary>A area of <paramref name="value"/> square centimeters.</summary>
    public static Area SquareCentimeters(this long value) => Area.FromSquareCentimeters(value);
    /// <summary>A area of <paramref name="value"/> square centimeters.</summary>
    public static Area SquareCentimeters(this double value) => Area.FromSquareCentimeters(value);
    /// <summary>A area of <paramref name="value"/> square centimeters.</summary>
    public static Area SquareCentimeters(this decimal value) => Area.FromSquareCentimeters(value);

    /// <summary>A speed of <paramref name="value"/> meters per second.</summary>
    public static Speed MetersPerSecond(this int value) => Speed.FromMetersPerSecond(value);
    /// <summary>A speed of <paramref name="value"/> meters per second.</summary>
    public static Speed MetersPerSecond(this long value) => Speed.FromMetersPerSecond(value);
    /// <summary>A speed of <paramref name="value"/> meters per second.</summary>
    public static Speed MetersPerSecond(this double value) => Speed.FromMetersPerSecond(value);
    /// <summary>A speed of <paramref name="value"/> meters per second.</summary>
    public static Speed MetersPerSecond(this decimal value) => Speed.FromMetersPerSecond(value);

    /// <summary>A acceleration of <paramref name="value"/> meters per second squared.</summary>
    public static Acceleration MetersPerSecondSquared(this int value) => Acceleration.FromMetersPerSecondSquared(value);
    /// <summary>A acceleration of <paramref name="value"/> meters per second squared.</summary>
    public static Acceleration MetersPerSecondSquared(this long value) => Acceleration.FromMetersPerSecondSquared(value);
    /// <summary>A acceleration of <paramref name="value"/> meters per second squared.</summary>
    public static Acceleration MetersPerSecondSquared(this double value) => Acceleration.FromMetersPerSecondSquared(value);
    /// <summary>A acceleration of <paramref name="value"/> meters per second squared.</summary>
    public static Acceleration MetersPerSecondSquared(this decimal value) => Acceleration.FromMetersPerSecondSquared(value);

    /// <summary>A ratio of <paramref name="value"/> percent.</summary>
    public static Ratio Percent(this int value) => Ratio.FromPercent(value);
    /// <summary>A ratio of <paramref name="value"/> percent.</summary>
    public static Ratio Percent(this long value) => Ratio.FromPercent(value);
    /// <summary>A ratio of <paramref name="value"/> percent.</summary>
    public static Ratio Percent(this double value) => Ratio.FromPercent(value);
    /// <summary>A ratio of <paramref name="value"/> percent.</summary>
    public static Ratio Percent(this decimal value) => Ratio.FromPercent(value);

    /// <summary>A ratio of <paramref name="value"/> decimal fractions.</summary>
    public static Ratio DecimalFractions(this int value) => Ratio.FromDecimalFractions(value);
    /// <summary>A ratio of <paramref name="value"/> decimal fractions.</summary>
    public static Ratio DecimalFractions(this long value) => Ratio.FromDecimalFractions(value);
    /// <summary>A ratio of <paramref name="value"/> decimal fractions.</summary>
    public static Ratio DecimalFractions(this double value) => Ratio.FromDecimalFractions(value);
    /// <summary>A ratio of <paramref name="value"/> decimal fractions.</summary>
    public static Ratio DecimalFractions(this decimal value) => Ratio.FromDecimalFractions(value);

    /// <summary>A temperature of <paramref name="value"/> degrees Celsius.</summary>
    public static Temperature Celsius(this int value) => Temperature.FromDegreesCelsius(value);
    /// <summary>A temperature of <paramref name="value"/> degrees Celsius.</summary>
    public static Temperature Celsius(this long value) => Temperature.FromDegreesCelsius(value);
    /// <summary>A temperature of <paramref name="value"/> degrees Celsius.</summary>
    public static Temperature Celsius(this double value) => Temperature.FromDegreesCelsius(value);
    /// <summary>A temperature of <paramref name="value"/> degrees Celsius.</summary>
    public static Temperature Celsius(this decimal value) => Temperature.FromDegreesCelsius(value);

    /// <summary>A temperature of <paramref name="value"/> degrees Celsius.</summary>
    public static Temperature DegreesCelsius(this int value) => Temperature.FromDegreesCelsius(value);
    /// <summary>A temperature of <paramref name="value"/> degrees Celsius.</summary>
    public static Temperature DegreesCelsius(this long value) => Temperature.FromDegreesCelsius(value);
    /// <summary>A temperature of <paramref name="value"/> degrees Celsius.</summary>
    public static Temperature DegreesCelsius(this double value) => Temperature.FromDegreesCelsius(value);
    /// <summary>A temperature of <paramref name="value"/> degrees Celsius.</summary>
    public static Temperature DegreesCelsius(this decimal value) => Temperature.FromDegreesCelsius(value);

    /// <summary>A temperature difference of <paramref name="value"/> kelvins.</summary>
    public static TemperatureDelta Kelvins(this int value) => TemperatureDelta.FromKelvins(value);
    /// <summary>A temperature difference of <paramref name="value"/> kelvins.</summary>
    public static TemperatureDelta Kelvins(this long value) => TemperatureDelta.FromKelvins(value);
    /// <summary>A temperature difference of <paramref name="value"/> kelvins.</summary>
    public static TemperatureDelta Kelvins(this double value) => TemperatureDelta.FromKelvins(value);
    /// <summary>A temperature difference of <paramref name="value"/> kelvins.</summary>
    public static TemperatureDelta Kelvins(this decimal value) => TemperatureDelta.FromKelvins(value);

    /// <summary>A Joule integral (I²t) of <paramref name="value"/> A²s.</summary>
    public static JouleIntegral AmpereSquaredSeconds(this int value) => JouleIntegral.FromAmpereSquaredSeconds(value);
    /// <summary>A Joule integral (I²t) of <paramref name="value"/> A²s.</summary>
    public static JouleIntegral AmpereSquaredSeconds(this long value) => JouleIntegral.FromAmpereSquaredSeconds(value);
    /// <summary>A Joule integral (I²t) of <paramref name="value"/> A²s.</summary>
    public static JouleIntegral AmpereSquaredSeconds(this double value) => JouleIntegral.FromAmpereSquaredSeconds(value);
    /// <summary>A Joule integral (I²t) of <paramref name="value"/> A²s.</summary>
    public static JouleIntegral AmpereSquaredSeconds(this decimal value) => JouleIntegral.FromAmpereSquaredSeconds((double)value);
}
