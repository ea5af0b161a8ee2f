using System.Globalization;
using CsCheck;
using Logbook.Plant;

namespace Logbook.Plant.Tests;

public sealed class TypedNumberTests
{
    private static double? Number(string text) => Typed.Number(text, Place.Unknown, out _);

    [Theory]
    [InlineData("103.4", 103.4)]
    [InlineData("103,4", 103.4)]
    [InlineData(" 7 ", 7)]
    [InlineData("-0.5", -0.5)]
    [InlineData("+12", 12)]
    [InlineData("\u22123,25", -3.25)]
    [InlineData("6.40", 6.4)]
    [InlineData("1,2345", 1.2345)]
    [InlineData("1.234", 1.234)]
    public void A_number_is_read(string text, double value) => Assert.Equal(value, Number(text));

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData("abc")]
    [InlineData("1 234")]
    [InlineData("1\u00A0234,5")]
    [InlineData("1.234,5")]
    [InlineData("1,234.5")]
    [InlineData("1,234,567")]
    [InlineData("1.234.567")]
    [InlineData("1'234")]
    [InlineData("5.")]
    [InlineData(".5")]
    [InlineData("1e3")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("--3")]
    [InlineData("٣")]
    [InlineData("123456789012345678901")]
    public void What_is_no_plain_number_is_refused(string text)
    {
        Assert.Null(Typed.Number(text, new Place("f.csv", 3, 5), out var mistake));
        Assert.StartsWith("f.csv:3:5: '", mistake!.ToString(), StringComparison.Ordinal);
        Assert.NotEmpty(mistake.Accepted);
    }

    [Fact]
    public void A_comma_before_three_digits_is_refused_with_both_ways_to_write_it()
    {
        Assert.Null(Typed.Number("1,234", Place.Unknown, out var mistake));

        Assert.Equal("'1,234' could mean thousands or decimals; write 1.234 or 1234", mistake!.ToString());
    }

    [Fact]
    public void What_is_written_with_a_point_is_read_to_the_last_bit() =>
        Gen.Decimal[-1_000_000m, 1_000_000m].Sample(value =>
        {
            var text = Math.Round(value, 6).ToString(CultureInfo.InvariantCulture);
            return Number(text) == double.Parse(text, CultureInfo.InvariantCulture);
        });

    /// <summary>Habits of writing: thousands and decimals.</summary>
    private static readonly (string Group, string Decimal)[] Habits =
        [(".", ","), (",", "."), (" ", ","), ("\u00A0", ","), ("\u202F", ","), ("'", "."), ("", ","), ("", ".")];

    [Fact]
    public void A_number_of_any_habit_is_read_as_meant_or_refused() =>
        Gen.Select(Any.Of(Habits), Gen.Int[1, 6], Gen.Double[-1e7, 1e7]).Sample((habit, decimals, value) =>
        {
            var format = new NumberFormatInfo { NumberGroupSeparator = habit.Group, NumberDecimalSeparator = habit.Decimal };
            var text = value.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), format);
            var meant = double.Parse(value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

            var read = Typed.Number(text, Place.Unknown, out var mistake);
            return read is null ? mistake is not null : read == meant;
        });

    [Theory]
    [InlineData("103.4 degC", 103.4, "degC")]
    [InlineData("103,4°C", 103.4, "degC")]
    [InlineData("5%", 5, "%")]
    [InlineData("0.88 1", 0.88, "1")]
    [InlineData("12", 12, null)]
    [InlineData("120 g/L Na2O", 120, "g/L Na2O")]
    public void A_unit_may_follow(string text, double value, string? unit)
    {
        var measured = Typed.Measured(text, Place.Unknown, out var mistake);

        Assert.Null(mistake);
        Assert.Equal((value, unit), (measured!.Value, measured.Unit?.Name));
    }

    [Theory]
    [InlineData("degC", "'degC' is no number")]
    [InlineData("1 000 kg", "unit '000 kg' is unknown")]
    [InlineData("1,000 kg", "could mean thousands")]
    [InlineData("120 g/L Na", "alkali needs its basis")]
    [InlineData("3 4", "unit '4' is unknown")]
    public void A_value_that_cannot_be_read_is_refused(string text, string wrong)
    {
        Assert.Null(Typed.Measured(text, Place.Unknown, out var mistake));
        Assert.Contains(wrong, mistake!.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("15m", 15)]
    [InlineData("1h30m", 90)]
    [InlineData("2d", 2880)]
    [InlineData("90m", 90)]
    [InlineData("0m", 0)]
    public void A_length_of_time_is_read(string text, double minutes) =>
        Assert.Equal(minutes, Typed.Duration(text, Place.Unknown, out _)?.TotalMinutes);

    [Theory]
    [InlineData("")]
    [InlineData("15")]
    [InlineData("1.5h")]
    [InlineData("30m1h")]
    [InlineData("-5m")]
    [InlineData("15 min")]
    public void What_is_no_length_of_time_is_refused(string text)
    {
        Assert.Null(Typed.Duration(text, Place.Unknown, out var mistake));
        Assert.Contains("is no length of time", mistake!.ToString(), StringComparison.Ordinal);
    }
}
