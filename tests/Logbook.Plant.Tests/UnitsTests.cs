using CsCheck;
using Logbook.Plant;

namespace Logbook.Plant.Tests;

public sealed class UnitsTests
{
    private static Unit Unit(string name) => Units.Find(name) ?? throw new ArgumentException("no such unit", nameof(name));

    private static double Convert(double value, string from, string to) => Units.Convert(value, Unit(from), Unit(to));

    [Theory]
    // NIST SP 811 (2008), appendix B.8, factors as printed there.
    [InlineData("lb/ft3", "kg/m3", 16.01846, 1e-6)]
    [InlineData("lb/gal", "kg/m3", 119.8264, 1e-6)]
    [InlineData("gpm", "L/min", 3.785412, 1e-6)]
    [InlineData("psi", "kPa", 6.894757, 1e-6)]
    [InlineData("psi abs", "kPa abs", 6.894757, 1e-6)]
    [InlineData("short ton", "kg", 907.1847, 1e-6)]
    [InlineData("lb/h", "kg/h", 0.45359237, 1e-9)]
    [InlineData("ft3", "m3", 0.02831685, 1e-6)]
    [InlineData("gal", "L", 3.785412, 1e-6)]
    [InlineData("in", "mm", 25.4, 1e-12)]
    // GNU units, gpm in m3/h.
    [InlineData("gpm", "m3/h", 0.2271247, 1e-6)]
    public void A_factor_is_the_published_one(string from, string to, double published, double relative) =>
        Assert.Equal(published, Convert(1, from, to), published * relative);

    [Theory]
    // GNU units: units -t '(2 sodium + oxygen)/(2 (sodium+oxygen+hydrogen))' prints 0.77479272.
    [InlineData("g/L NaOH", "g/L Na2O", 1, 0.77479272)]
    [InlineData("g/L Na2O", "g/L NaOH", 1, 1 / 0.77479272)]
    // 7.5 lb/ft3 as Na2O is 120.14 g/L as Na2O and 155.06 g/L as NaOH: computed from NIST SP 811 and the IUPAC atomic weights.
    [InlineData("lb/ft3 Na2O", "g/L Na2O", 7.5, 120.1385)]
    [InlineData("lb/ft3 Na2O", "g/L NaOH", 7.5, 155.0589)]
    // 1 mol/L NaOH is 39.997 g/L NaOH: computed from the IUPAC atomic weights.
    [InlineData("mol/L NaOH", "g/L NaOH", 1, 39.99677)]
    public void Alkali_goes_over_by_equivalents(string from, string to, double value, double expected) =>
        Assert.Equal(expected, Convert(value, from, to), expected * 3e-6);

    [Theory]
    // NIST SP 811, appendix B.8: t/degC = (t/degF - 32)/1.8.
    [InlineData(212, 100)]
    [InlineData(32, 0)]
    [InlineData(-40, -40)]
    public void Degrees_Fahrenheit_have_their_own_zero(double fahrenheit, double celsius) =>
        Assert.Equal(celsius, Convert(fahrenheit, "degF", "degC"), 1e-9);

    [Fact]
    public void A_difference_in_Fahrenheit_has_no_offset() =>
        Assert.Equal(1, Units.ConvertDifference(1.8, Unit("degF"), Unit("degC")), 1e-12);

    /// <summary>What the line is measured in, each in the company of what it converts to and of nothing else.</summary>
    [Theory]
    [InlineData("g/L Na2O", "g/L NaOH", "lb/ft3 Na2O", "lb/ft3 NaOH")]
    [InlineData("kg/m3", "lb/ft3", "mg/L")]
    [InlineData("m3/h", "L/min", "gpm")]
    [InlineData("t/h", "kg/h", "lb/h", "t/d")]
    [InlineData("degC", "degF")]
    [InlineData("K")]
    [InlineData("kPa", "bar", "psi")]
    [InlineData("kPa abs", "bar abs", "psi abs")]
    [InlineData("mol/L")]
    [InlineData("mL", "m3", "L")]
    [InlineData("%", "1")]
    [InlineData("mm", "m")]
    [InlineData("h", "min")]
    [InlineData("kg", "t")]
    [InlineData("uS/cm", "mS/cm")]
    [InlineData("rpm")]
    [InlineData("A")]
    [InlineData("ppm")]
    public void The_units_of_the_line_convert_within_their_kind_and_not_beyond(params string[] kind)
    {
        string[] line =
        [
            "g/L Na2O", "g/L NaOH", "lb/ft3 Na2O", "lb/ft3 NaOH", "mol/L", "mL", "kg/m3", "lb/ft3", "m3/h", "L/min", "gpm", "t/h", "kg/h", "lb/h", "t/d", "degC", "degF", "K",
            "kPa", "bar", "psi", "kPa abs", "bar abs", "psi abs", "%", "rpm", "A", "mm", "h", "min", "mg/L", "uS/cm", "mS/cm", "ppm", "kg", "t", "m3", "L", "1", "m",
        ];

        Assert.All(line, name => Assert.Equal(kind.Contains(name, StringComparer.Ordinal), Units.CanConvert(Unit(kind[0]), Unit(name))));
    }

    [Theory]
    [InlineData("degC", "K")]
    [InlineData("kPa", "kPa abs")]
    [InlineData("bar", "bar abs")]
    [InlineData("g/L", "g/L Na2O")]
    [InlineData("mol/L", "g/L Na2O")]
    [InlineData("kg/h", "m3/h")]
    public void What_only_looks_alike_does_not_convert(string one, string other)
    {
        Assert.False(Units.CanConvert(Unit(one), Unit(other)));
        Assert.Throws<ArgumentException>(() => Convert(1, one, other));
    }

    [Theory]
    [InlineData("°C", "degC")]
    [InlineData("m³/h", "m3/h")]
    [InlineData("µS/cm", "uS/cm")]
    [InlineData("μS/cm", "uS/cm")]
    [InlineData(" kg/m³ ", "kg/m3")]
    [InlineData("g/L as Na2O", "g/L Na2O")]
    [InlineData("g/l na2o", "g/L Na2O")]
    [InlineData("m3/(m2·h)", "m3/m2 h")]
    [InlineData("DEGC", "degC")]
    public void A_spelling_finds_its_unit(string spelling, string name) => Assert.Equal(name, Units.Find(spelling)?.Name);

    [Theory]
    [InlineData("")]
    [InlineData("g/L Na")]
    [InlineData("furlong")]
    public void An_unknown_unit_is_not_found(string name) => Assert.Null(Units.Find(name));

    [Fact]
    public void Alkali_without_its_basis_is_refused_with_the_accepted_units() =>
        Assert.Equal(
            "unit 'g/L Na' is unknown; alkali needs its basis: g/L Na2O, g/L NaOH, lb/ft3 Na2O, lb/ft3 NaOH, mol/L NaOH",
            Units.Unknown("g/L Na", Place.Unknown).ToString());

    [Fact]
    public void A_misspelt_unit_is_refused_with_those_of_its_kind() =>
        Assert.EndsWith("accepted of that kind: m3/h, L/min, L/s, L/h, m3/d, gpm", Units.Unknown("m3/hr", Place.Unknown).ToString(), StringComparison.Ordinal);

    [Fact]
    public void Names_are_unique_in_any_capitals() =>
        Assert.Equal(Units.All.Count, Units.All.Select(u => u.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());

    [Fact]
    public void There_and_back_gives_the_value_again() =>
        Gen.Select(Any.Of([.. Pairs()]), Gen.Double[-1e6, 1e6]).Sample((pair, value) =>
            Math.Abs(Units.Convert(Units.Convert(value, pair.From, pair.To), pair.To, pair.From) - value) <= 1e-9 * Math.Max(1, Math.Abs(value)));

    [Fact]
    public void An_equal_unit_changes_no_bit() =>
        Gen.Select(Any.Of([.. Units.All]), Gen.Double).Sample((unit, value) =>
            double.IsNaN(value) || BitConverter.DoubleToInt64Bits(Units.Convert(value, unit, unit)) == BitConverter.DoubleToInt64Bits(value));

    private static IEnumerable<(Unit From, Unit To)> Pairs() =>
        from one in Units.All from other in Units.All where Units.CanConvert(one, other) select (one, other);
}
