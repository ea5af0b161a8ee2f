using Logbook.Contracts;
using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

public sealed class EntryCalculationTests
{
    private readonly Line _line = new();

    [Fact]
    public void Every_calculation_whose_inputs_are_here_gives_a_result_with_uncertainty()
    {
        var entry = _line.Save("WL-A=29.3667", "WL-B=34.3273", "WL-C=39.6847", "SL-T1=101.2");

        // 100 (2A - B) / (2A - B + C - B) with A 29.3667, B 34.3273, C 39.6847: 82.000, by hand.
        var causticity = entry.Results.Single(r => r.Name == "white liquor");
        Assert.Equal(82.000, causticity.Value, 0.001);
        Assert.Equal(("causticity", "WL-CE", "%", "Tests 1.0"), (causticity.Output, causticity.Point, causticity.Unit, causticity.By));
        Assert.InRange(causticity.U!.Value, 0.09, 0.12);
        Assert.Equal("burette", causticity.Covers);

        var margin = entry.Results.Single(r => r.Name == "boiling");
        Assert.Equal(2.8, margin.Value, 1e-9);
        Assert.Equal(0.5, margin.U!.Value, 1e-9); // 0.3 of the thermometer and 0.4 of the constant, in squares
        Assert.Equal("boiling and slaker temperature", margin.Covers);
        Assert.Equal(2, entry.Results.Count);
    }

    [Fact]
    public void Numbers_come_from_the_journal_while_they_are_not_stale()
    {
        _line.Save("LM-CAO=88", "SL-F1=300");
        _line.Later(4);

        Assert.Equal(10 * 18.6 * 88 / 300, Assert.Single(_line.Save("LM-F1=18.60").Results).Value, 1e-9);
    }

    [Fact]
    public void An_alarm_of_readings_of_two_hours_names_the_older_ones()
    {
        _line.Save("LM-CAO=88", "SL-F1=300", "LM-F1=19.0");
        _line.Later(1);

        // 10 x 19.0 x 88 / 240 = 69.7: the flow of now beside the lime of an hour ago.
        var apart = Assert.Single(_line.Save("SL-F1=240").Findings, f => f.Point == "SL-CAO");
        Assert.Matches("; with .*LM-F1 of [0-9]", apart.Text);

        Assert.DoesNotContain("; with", Assert.Single(_line.Save("SL-F1=240", "LM-F1=19.0", "LM-CAO=88").Findings, f => f.Point == "SL-CAO").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_could_not_be_computed_stands_behind_what_was_found()
    {
        var line = new Line(Some.Changed(("ajar!watch", "ajar!note")));
        line.Save("LM-CAO=88", "SL-F1=300");
        line.Later(TimeSpan.FromHours(4) + TimeSpan.FromMinutes(1));

        // The flow that is missing comes before the hatches among the points.
        Assert.Equal(["choice.note", "calculation.missing"], line.Save("LM-F1=18.60", "SL-HATCH=2").Findings.Select(f => f.Code), StringComparer.Ordinal);
    }

    [Fact]
    public void A_stale_number_is_named_once_and_nothing_is_computed()
    {
        _line.Save("LM-CAO=88", "SL-F1=300");
        _line.Later(TimeSpan.FromHours(4) + TimeSpan.FromMinutes(1));

        var entry = _line.Save("LM-F1=18.60");

        Assert.Empty(entry.Results);
        var note = Assert.Single(entry.Findings);
        Assert.Equal((Level.Note, "calculation.missing", "SL-F1"), (note.Level, note.Code, note.Point));
        Assert.Contains("older than 4 h; not computed: Test of dose (lime)", note.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sample_is_taken_from_one_entry_or_not_at_all()
    {
        _line.Save("WL-A=29.37", "WL-B=34.33", "WL-C=39.68");
        _line.Later(2);

        var entry = _line.Save("WL-A=29.40", "WL-B=34.30");

        Assert.Empty(entry.Results);
        Assert.Equal("WL-C is not in the same entry as the rest of its sample; not computed: Test of end-points (white liquor)", Assert.Single(entry.Findings).Text);
    }

    [Fact]
    public void A_later_value_is_never_taken()
    {
        _line.Save("LM-CAO=88", "SL-F1=300");
        _line.Later(2);
        _line.Save("SL-F1=280");

        var late = Some.Entry("LM-F1=18.60") with { At = Some.Morning.AddHours(1) };

        Assert.Equal(10 * 18.6 * 88 / 300, Assert.Single(RecordEntry.Judge(_line.Desk, late).Value!.Results).Value, 1e-9);
    }

    [Fact]
    public void What_a_calculation_refuses_is_a_finding_beside_the_saved_readings()
    {
        var entry = _line.Save("WL-A=29.37", "WL-B=34.33", "WL-C=34.33");

        Assert.Equal(3, entry.Readings.Count);
        var refused = Assert.Single(entry.Findings);
        Assert.Equal(("calculation.refused", "WL-C"), (refused.Code, refused.Point));
        Assert.Contains("end points are cumulative", refused.Text, StringComparison.Ordinal);
    }

    // On one burette a later end point cannot be below an earlier one: common practice, no source.
    [Theory]
    [InlineData("WL-A=34.33 WL-B=29.37", "WL-B", "White liquor, end point B 29.37 mL, below WL-A 34.33 mL")]
    [InlineData("WL-A=34.33 WL-B=29.37 WL-C=39.68", "WL-B", "White liquor, end point B 29.37 mL, below WL-A 34.33 mL")]
    [InlineData("WL-B=34.33 WL-C=29.37", "WL-C", "White liquor, end point C 29.37 mL, below WL-B 34.33 mL")]
    public void A_reading_below_the_one_from_which_it_counts_on_is_found_before_its_sample_is_whole(string typed, string point, string text)
    {
        var entry = _line.Save(typed.Split(' '));

        Assert.Empty(entry.Results);
        var order = Assert.Single(entry.Findings, f => f.Code != "calculation.missing");
        Assert.Equal((Level.Watch, "calculation.order", point), (order.Level, order.Code, order.Point));
        Assert.StartsWith(text, order.Text, StringComparison.Ordinal);
        Assert.EndsWith("not computed: Test of end-points (white liquor)", order.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("WL-A=34.33 WL-B=34.33")]
    [InlineData("WL-A=34.33 WL-C=29.37")]
    public void What_is_equal_and_what_does_not_count_on_from_each_other_is_in_order(string typed) =>
        Assert.DoesNotContain(_line.Save(typed.Split(' ')).Findings, f => f.Code == "calculation.order");

    [Fact]
    public void Another_sample_is_not_held_against_this_one()
    {
        _line.Save("WL-A=34.33", "WL-B=38.0", "WL-C=42.0");
        _line.Later(2);

        Assert.DoesNotContain(_line.Save("WL-B=29.37").Findings, f => f.Code == "calculation.order");
    }

    [Fact]
    public void An_input_outside_what_the_calculation_covers_is_a_finding_and_no_result()
    {
        var entry = _line.Save("LM-F1=18.6", "LM-CAO=88", "SL-F1=0");

        Assert.Empty(entry.Results);
        Assert.Contains(entry.Findings, f => f is { Code: "calculation.range", Point: "SL-F1" } && f.Text.Contains("flow 0 m3/h is outside the 1 to 1000", StringComparison.Ordinal));
    }

    [Fact]
    public void A_plug_in_that_fails_is_named_and_the_readings_are_saved()
    {
        var failing = new Formula("margin", Some.Margin.Info.Inputs, Some.Margin.Info.Outputs, _ => new Failed("it gave no number"));
        var line = new Line(calculations: [Some.EndPoints.Loaded, Some.Dose.Loaded, failing.Loaded]);

        var entry = line.Save("SL-T1=101.2");

        var finding = Assert.Single(entry.Findings);
        Assert.Equal((Level.Note, "plugin.failed"), (finding.Level, finding.Code));
        Assert.Contains("Tests 1.0", finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_calculation_rests_while_its_equipment_stands_but_never_the_margin_to_boiling()
    {
        Assert.NotNull(Writing.ChangeState(_line.Desk, "slaker", "stopped", null, null, "op1").Record);
        _line.Later(1);

        Assert.Equal("boiling", Assert.Single(_line.Save("LM-F1=18.6", "LM-CAO=88", "SL-F1=300", "SL-T1=99").Results).Name);
    }

    [Fact]
    public void Results_that_share_a_reading_share_its_error()
    {
        // y = x and z = y - x: z does not depend on x at all, whatever x is uncertain by.
        var same = new Formula("same", [new("x", "degC", "x", 0, 200)], [new("y", "degC", "y")], i => Formula.Give(("y", i["x"])));
        var less = new Formula("less", [new("y", "degC", "y", 0, 200), new("x", "degC", "x", 0, 200)], [new("z", "K", "z") { MethodU = "0.1" }], i => Formula.Give(("z", i["y"] - i["x"])));
        var files = Some.Changed(
            ("[[calculation]]\nuse = \"margin\"", "[[calculation]]\nuse = \"less\"\nname = \"second\"\ninputs.y = \"D-Y\"\ninputs.x = \"SL-T1\"\n\n[[calculation]]\nuse = \"same\"\nname = \"first\"\ninputs.x = \"SL-T1\"\noutputs.y = \"D-Y\"\n\n[[calculation]]\nuse = \"margin\""),
            ("WL-CE,", "D-Y,copy,site,degC,derived,1,,,,,,,,,,,,,,,\nWL-CE,"));

        var results = new Line(files, [.. Some.Calculations, same.Loaded, less.Loaded]).Save("SL-T1=101.2").Results;

        Assert.Equal(0.3, results.Single(r => r.Name == "first").U!.Value, 1e-9);
        Assert.Equal(0.1, results.Single(r => r.Name == "second").U!.Value, 1e-9);
    }

    [Fact]
    public void A_derived_value_from_an_earlier_entry_brings_its_uncertainty_along()
    {
        var copy = new Formula("copy", [new("dose", "kg/m3", "dose", 0, 200), new("t", "degC", "t", 0, 200)], [new("y", "kg/m3", "y")], i => Formula.Give(("y", i["dose"])));
        var line = new Line(
            Some.Changed(("[[calculation]]\nuse = \"margin\"", "[[calculation]]\nuse = \"copy\"\nname = \"copy\"\ninputs.dose = \"SL-CAO\"\ninputs.t = \"SL-T1\"\n\n[[calculation]]\nuse = \"margin\"")),
            [.. Some.Calculations, copy.Loaded]);
        var first = line.Save("LM-F1=18.6", "LM-CAO=88", "SL-F1=300").Results.Single();
        line.Later(1);

        var second = line.Save("SL-T1=101").Results.Single(r => r.Name == "copy");

        Assert.Equal(first.Value, second.Value, 1e-9);
        Assert.Equal(first.U!.Value, second.U!.Value, 1e-9);
    }

    [Fact]
    public void A_lagged_input_is_taken_as_it_was_as_the_mean_over_a_quarter_of_the_lag()
    {
        var line = new Line(Some.Changed(("inputs.flow = \"SL-F1\"", "inputs.flow = \"SL-F1\"\nlag.flow = \"2h\"")));
        line.Save("LM-CAO=88", "SL-F1=290"); // 09:00
        line.Later(TimeSpan.FromMinutes(50));
        line.Save("SL-F1=300"); // 09:50
        line.Later(TimeSpan.FromMinutes(20));
        line.Save("SL-F1=310"); // 10:10
        line.Later(TimeSpan.FromMinutes(110));

        // At 12:00 the flow of 10:00, from 09:45 to 10:15: 305, and not that of now.
        Assert.Equal(10 * 18.6 * 88 / 305, line.Save("LM-F1=18.60", "SL-F1=250").Results.Single(r => r.Name == "lime").Value, 1e-9);
    }

    [Fact]
    public void What_a_calculation_has_to_say_of_an_earlier_hour_was_said_in_that_hour()
    {
        var now = new Line().Save("LM-CAO=88", "SL-F1=300", "LM-F1=22.5");
        Assert.Contains(now.Findings, f => f is { Code: "calc.dose.note", Point: "SL-CAO" });

        var line = new Line(Some.Changed(("inputs.flow = \"SL-F1\"", "inputs.flow = \"SL-F1\"\nlag.lime = \"2h\"\nlag.cao = \"2h\"\nlag.flow = \"2h\"")));
        line.Save("LM-CAO=88", "SL-F1=300", "LM-F1=22.5");
        line.Later(2);
        var later = line.Save("SL-F1=300");

        Assert.Equal(10 * 22.5 * 88 / 300, later.Results.Single(r => r.Name == "lime").Value, 1e-9);
        Assert.DoesNotContain(later.Findings, f => f.Code == "calc.dose.note");
    }

    [Fact]
    public void A_derived_value_is_judged_by_its_limits()
    {
        var finding = Assert.Single(_line.Save("LM-F1=21.9", "LM-CAO=89", "SL-F1=280").Findings);

        Assert.Equal(("limit.urgent-high", "SL-CAO"), (finding.Code, finding.Point));
        Assert.Contains(finding.Evidence, e => e.StartsWith("standard uncertainty", StringComparison.Ordinal));
    }

    [Fact]
    public void An_open_role_takes_the_sites_altitude_else_the_default_else_nothing()
    {
        var open = new Formula(
            "margin",
            [
                .. Some.Margin.Info.Inputs, new("altitude", "m", "above the sea", -500, 5000) { Default = 0 },
                new("salts", "K", "rise", 0, 3) { Default = 0.5 }, new("extra", "K", "more", 0, 3) { Required = false },
            ],
            Some.Margin.Info.Outputs,
            i => Formula.Give(("margin", i["altitude"] + i["salts"] + (i.Has("extra") ? 100 : 0))));

        var result = Assert.Single(new Line(calculations: [Some.EndPoints.Loaded, Some.Dose.Loaded, open.Loaded]).Save("SL-T1=101").Results);

        Assert.Equal(12.5, result.Value, 1e-9);
        Assert.Null(result.U);
    }
}
