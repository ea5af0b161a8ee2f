using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

public sealed class EntryParsingTests
{
    private readonly Line _line = new();

    [Fact]
    public void A_value_is_kept_beside_what_was_typed()
    {
        var reading = Assert.Single(_line.Save("SL-T1=214,7 degF").Readings);

        Assert.Equal("214,7 degF", reading.Typed);
        Assert.Equal((214.7 - 32) * 5 / 9, reading.Value!.Value, 1e-9);
        Assert.Equal("degC", reading.Unit);
        Assert.Equal(Some.Morning, reading.At);
    }

    [Fact]
    public void A_tag_is_known_in_any_case_and_stored_as_the_site_spells_it()
    {
        Assert.Equal("SL-T1", Assert.Single(_line.Save("sl-t1=101.2").Readings).Point);
    }

    [Fact]
    public void An_unknown_tag_is_refused_with_the_nearest_ones()
    {
        var mistake = _line.RefusedOnce("SL-T2=101.2");

        Assert.Contains("'SL-T2'", mistake.Wrong, StringComparison.Ordinal);
        Assert.Contains("SL-T1", mistake.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void A_derived_point_is_not_typed()
    {
        Assert.Contains("computed", _line.RefusedOnce("WL-CE=82").Wrong, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("SL-T1=hot", "is no number")]
    [InlineData("SL-T1=", "is no number")]
    [InlineData("SL-F1=1,234", "could mean thousands")]
    [InlineData("SL-F1=1.234,5", "two ways")]
    [InlineData("SL-T1=101 bar", "bar cannot be turned into degC")]
    [InlineData("SL-T1=101 degg", "'degg' is unknown")]
    [InlineData("WL-TTA=120 g/L", "does not say its basis")]
    public void What_cannot_be_read_safely_is_refused(string reading, string wrong)
    {
        var mistake = _line.RefusedOnce(reading);

        Assert.Contains(wrong, mistake.Wrong, StringComparison.Ordinal);
        Assert.StartsWith(reading.Split('=')[0], mistake.Wrong, StringComparison.Ordinal);
        Assert.NotEmpty(mistake.Accepted);
    }

    [Fact]
    public void Alkali_without_its_basis_is_told_the_bases()
    {
        var accepted = _line.RefusedOnce("WL-TTA=120 g/L").Accepted;

        Assert.Contains("g/L Na2O", accepted, StringComparison.Ordinal);
        Assert.Contains("g/L NaOH", accepted, StringComparison.Ordinal);
    }

    /// <summary>1 g Na2O = 1.29067 g NaOH, by IUPAC atomic weights.</summary>
    [Fact]
    public void Alkali_given_as_NaOH_is_kept_as_Na2O()
    {
        var reading = Assert.Single(_line.Save("WL-TTA=158.73 g/L NaOH").Readings);

        Assert.Equal(158.73 / 1.29067, reading.Value!.Value, 1e-3);
    }

    [Fact]
    public void A_choice_is_typed_by_its_digit_or_its_words()
    {
        Assert.Equal(2, Assert.Single(_line.Save("SL-HATCH=2").Readings).Value);
        Assert.Equal(2, Assert.Single(_line.Save("SL-HATCH=ajar").Readings).Value);

        Assert.Equal("accepted: 1 shut, 2 ajar, 3 open", _line.RefusedOnce("SL-HATCH=4").Accepted);
    }

    [Fact]
    public void Not_taken_needs_a_reason_of_the_list()
    {
        Assert.Contains("1 no time, 2 forgot", _line.RefusedOnce("SL-T1=-").Accepted, StringComparison.Ordinal);

        var digit = Some.Entry() with { Readings = [Some.Reading("SL-T1", "-") with { Why = "4" }] };
        var reading = Assert.Single(RecordEntry.Judge(_line.Desk, digit).Value!.Readings);
        Assert.True(reading.NotTaken);
        Assert.Null(reading.Typed);
        Assert.Equal("instrument faulty", reading.Why);

        var words = digit with { Readings = [digit.Readings[0] with { Why = "Other: valve frozen" }] };
        Assert.Equal("other: valve frozen", RecordEntry.Judge(_line.Desk, words).Value!.Readings[0].Why);

        var bare = digit with { Readings = [digit.Readings[0] with { Why = "5:" }] };
        Assert.Contains("'other' says nothing by itself", Assert.Single(_line.Refused(bare)).Wrong, StringComparison.Ordinal);

        var unknown = digit with { Readings = [digit.Readings[0] with { Why = "lazy" }] };
        Assert.Contains("'lazy'", Assert.Single(_line.Refused(unknown)).Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void An_impossible_value_stands_only_with_a_reason_and_is_found()
    {
        Assert.Contains("0 to 115 degC", _line.RefusedOnce("SL-T1=140").Accepted, StringComparison.Ordinal);

        var why = Some.Entry() with { Readings = [Some.Reading("SL-T1", "140") with { Why = "probe on fire" }] };
        var entry = RecordEntry.Judge(_line.Desk, why).Value!;
        Assert.Contains(entry.Findings, f => f.Code == "range.outside" && f.Text.Contains("probe on fire", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("x")]
    [InlineData("3")]
    [InlineData("ok")]
    [InlineData("a b c d")]
    [InlineData("...")]
    public void A_reason_that_says_nothing_lets_no_impossible_value_stand(string why)
    {
        var request = Some.Entry() with { Readings = [Some.Reading("SL-T1", "140") with { Why = why }] };

        Assert.Contains("a reason in words", Assert.Single(_line.Refused(request)).Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_is_not_saved_for_a_round_that_its_point_is_not_in()
    {
        var request = Some.Entry("WL-TTA=120") with { Round = "hourly" };

        var mistake = Assert.Single(_line.Refused(request));

        Assert.Equal("WL-TTA is not in the round hourly", mistake.Wrong);
        Assert.Equal("in no round: save it without one", mistake.Accepted);
    }

    [Fact]
    public void A_time_to_come_is_refused_but_for_a_minute_of_grace()
    {
        var soon = Some.Entry("SL-T1=101") with { At = Some.Morning.AddSeconds(59) };
        Assert.True(RecordEntry.Judge(_line.Desk, soon).Ok);

        var later = soon with { At = Some.Morning.AddSeconds(61) };
        Assert.All(_line.Refused(later), m => Assert.Contains("future", m.Wrong, StringComparison.Ordinal));
    }

    [Fact]
    public void All_mistakes_are_said_at_once_each_with_its_place_and_nothing_is_saved()
    {
        var request = new EntryRequest("nobody",
        [
            new TypedReading("SL-T1", "101", new Place("a.csv", 2, 1)),
            new TypedReading("SL-X", "1", new Place("a.csv", 3, 1)),
            new TypedReading("SL-F1", "many", new Place("a.csv", 4, 1)),
        ])
        { Round = "hourly2" };

        var mistakes = _line.Refused(request);

        Assert.Equal(["", "", "a.csv", "a.csv"], mistakes.Select(m => m.Where.File), StringComparer.Ordinal);
        Assert.Contains("known: op1, eng1", mistakes[0].Accepted, StringComparison.Ordinal);
        Assert.Contains("hourly", mistakes[1].Accepted, StringComparison.Ordinal);
        Assert.Equal([3, 4], mistakes.Skip(2).Select(m => m.Where.Line));
    }

    [Fact]
    public void A_point_is_given_once()
    {
        Assert.Contains("2 times", _line.RefusedOnce("SL-T1=101", "sl-t1=102").Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void An_entry_of_nothing_is_refused()
    {
        Assert.Equal("nothing to save", _line.RefusedOnce().Wrong);
    }

    [Fact]
    public void A_walk_cannot_end_before_it_starts()
    {
        var walk = Some.Entry("SL-T1=101") with { WalkStart = Some.Morning.AddMinutes(-10), WalkEnd = Some.Morning.AddMinutes(-20) };

        Assert.Contains("before it starts", Assert.Single(_line.Refused(walk)).Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_units_that_differ_are_refused()
    {
        var request = Some.Entry() with { Readings = [Some.Reading("SL-T1", "101 degC") with { Unit = "degF" }] };

        Assert.Contains("two units", Assert.Single(_line.Refused(request)).Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_journal_adopts_the_files_before_its_first_entry()
    {
        _line.Save("SL-T1=101.2");

        Assert.Equal(["site", "entry"], _line.Journal.Read().Select(r => r.Kind), StringComparer.Ordinal);
        Assert.Equal("2026-03-03-D", string.Join('-', _line.Journal.Read().Last().Shift.Split('-').Take(4)));
        Assert.Equal(2, _line.Desk.State.Head.Seq);
    }
}
