namespace RailRules.Tests;

/// <summary>Numbers for people: three significant digits and SI prefixes (SI brochure, 9th edition, table 7).</summary>
public sealed class FiguresTests
{
    [Theory]
    [InlineData(14.0515, "A", "14.1 A")]
    [InlineData(1000, "A", "1 kA")]
    [InlineData(999.6, "A", "1 kA")]
    [InlineData(0.0005, "Ω", "500 µΩ")]
    [InlineData(60, "V", "60 V")]
    [InlineData(-5, "°C", "-5 °C")]
    [InlineData(0, "A", "0 A")]
    [InlineData(1.0, "×", "1 ×")]
    [InlineData(12345, "A²s", "12300 A²s")]
    public void Text_has_three_digits_and_a_prefix(double value, string unit, string expected) => Assert.Equal(expected, Figures.Text(value, unit));
}
