using System.Text.Json;

namespace Logbook.Tests;

/// <summary>Derived points of the starter site: which values they take, how old, from which entry, and what they say when they cannot.</summary>
public sealed class TheStarterSiteComputes : IDisposable
{
    private static readonly string[] Hot = ["SL-T1=100.3", "GC-T2=90.0", "SL-F1=300", "LM-F1=18.60", "LM-N1=31.0"];
    private static readonly string[] GreenLiquor = ["GL-A=9.52", "GL-B=14.53", "GL-C=40.09"];
    private static readonly string[] WhiteLiquor = ["WL-A=30.65", "WL-B=35.85", "WL-C=41.45"];

    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void A_titration_gives_strengths_that_say_their_basis_and_temperature()
    {
        var words = Saved(["LB-N=0.5000", "GC-T2=90.0", .. GreenLiquor]);

        // 40.09 mL of 0.5 mol/L for 5 mL: 40.09 x 3.098927 = 124.24 g/L at 25 degC, the golden 120.0 at 90 (ratio 1.0354).
        Assert.Contains("green liquor alkali, tta: 124.2 g/L as Na2O at 25 degC plus or minus 1.0, sample", words, StringComparison.Ordinal);
        Assert.Contains("green liquor alkali, tta-line: 120.0 g/L as Na2O at line temperature plus or minus", words, StringComparison.Ordinal);
        Assert.Matches(@"green liquor, causticity: 1\d\.\d % plus or minus 0\.\d, burette\n", words);
    }

    [Fact]
    public void The_margin_to_boiling_takes_the_strength_that_was_titrated()
    {
        Saved(["LB-N=0.5000", .. GreenLiquor, "GC-T2=90.0"]);

        var margin = Result(Record(Hot), "SL-MARGIN");

        Assert.Equal(4.2 - 0.35, margin.GetProperty("value").GetDouble(), 0.4);
        Assert.Contains("slaker temperature", margin.GetProperty("covers").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_strength_older_than_its_limit_is_not_used_and_the_finding_names_it()
    {
        Saved(["LB-N=0.5000", "GC-T2=90.0", .. GreenLiquor]);
        Later(hours: 7); // the green liquor's figures serve six hours

        var answer = Record([.. Hot, "LM-CAO=88", "LM-T=60"]);

        Assert.False(Has(answer, "SL-LIMEX"));
        Assert.True(Has(answer, "SL-CAO"));
        Assert.Contains(Findings(answer, "calculation.missing"), t => t.StartsWith("GL-TTA of 2026-11-25 10:00 is older than 6 h; not computed: Lime that the target causticity asks for (lime wanted)", StringComparison.Ordinal));
    }

    [Fact]
    public void A_margin_that_cannot_be_computed_is_more_than_a_note()
    {
        var finding = Record(Hot).Json.GetProperty("findings").EnumerateArray().Single(f => Text(f, "text").Contains("GL-TTAH; not computed: Margin of the slaker to boiling", StringComparison.Ordinal));

        Assert.Equal("watch", Text(finding, "level"));
    }

    [Fact]
    public void A_lost_flow_is_one_cause_and_its_coming_back_is_no_slip()
    {
        Record([.. Hot, "LM-CAO=88", "CA-L1=85", "CA-L2=85", "CA-L3=85", "GT-L=70"]);
        Later(hours: 1);

        var lost = Findings(Record(["SL-F1=0"]), "calculation.refused");

        Assert.Contains("not computed with this SL-F1: ", Assert.Single(lost), StringComparison.Ordinal);
        Assert.Contains("lime", lost[0], StringComparison.Ordinal);
        Assert.Contains("time in causticizer 1", lost[0], StringComparison.Ordinal);
        Later(hours: 1);
        Assert.Empty(Findings(Record(["SL-F1=298"]), "slip.factor-10"));
    }

    [Fact]
    public void A_sample_is_taken_from_one_entry_or_not_at_all()
    {
        Record(["WL-A=29.37", "WL-B=34.33"]);
        Later(hours: 1);

        var answer = Record(["WL-C=39.68"]);

        Assert.False(Has(answer, "WL-CE"));
        Assert.Contains(Findings(answer, "calculation.missing"), t => t.Contains("is not in the same entry as the rest of its sample", StringComparison.Ordinal));
    }

    [Fact]
    public void A_sample_gives_no_new_figures_when_only_the_acid_is_titrated_again()
    {
        Record(["LB-N=0.5000", .. WhiteLiquor, "WF-T=93"]);
        Later(hours: 1);

        Assert.False(Has(Record(["LB-N=0.5010"]), "WL-TTA"));
    }

    [Fact]
    public void White_liquor_is_set_against_the_lime_of_two_and_a_half_hours_before()
    {
        Record(["LB-N=0.5000", .. GreenLiquor, .. Hot, "LM-CAO=88", "LM-T=60"]);
        Later(hours: 2.5);
        Record(["SL-F1=300", "LM-F1=20.5", "GC-T2=90.0", "SL-T1=101.5"]); // lime has been raised since

        var answer = Record(["LB-N=0.5000", "WF-T=93", .. WhiteLiquor]);
        var fed = Result(Record(["SL-F1=300"]), "WL-CAOF").GetProperty("value").GetDouble();

        Assert.Equal(54.56, fed, 0.01); // 18.60 x 880 / 300, not 20.5 x 880 / 300
        // 0.90478 x 120.0 x 0.75 x (82.0 - 15.0) / 100: computed from IUPAC atomic weights.
        Assert.InRange(Result(answer, "WL-CAO").GetProperty("value").GetDouble(), 53.5, 55.5);
    }

    [Fact]
    public void Without_readings_at_the_lag_the_result_is_left_out_and_says_of_which_hour()
    {
        var answer = Record(["SL-F1=300", "LM-F1=18.6", "LM-CAO=88"]);

        Assert.False(Has(answer, "WL-CAOF"));
        Assert.Contains(Findings(answer, "calculation.missing"), t => t.StartsWith("not given yet:", StringComparison.Ordinal) && t.Contains("LM-CAO of 2026-11-25 07:30", StringComparison.Ordinal));
    }

    [Fact]
    public void A_filter_that_is_washed_gives_no_permeability_and_says_so()
    {
        _cli.Run("state", "gl-filter", "acid", "--by", "op1");

        var answer = Record(["GF-F=0", "GF-DP=0.00", "RG-T=93"]);

        Assert.False(Has(answer, "GF-REL"));
        Assert.Contains(Findings(answer, "calculation.resting"), t => t.Contains("Green liquor filter", StringComparison.Ordinal) && t.Contains("Flux and permeability of a pressure filter", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_constant_of_the_site_is_shown_with_its_source_and_date()
    {
        var help = _cli.Run("calc", "explain", "slaker-temperature-rise").Out;

        Assert.Contains("evaporation: 8 kg/m3, standard uncertainty 1; source: fitted to steady hours at known lime feed; fitted 2026-05-04", help, StringComparison.Ordinal);
        Assert.Contains("gl-temperature: GC-T2, Green liquor temperature to the slaker, as it was 2.5 h before", help, StringComparison.Ordinal);
        Assert.Contains("slaking-heat: 1150 kJ/kg, the calculation's own default", help, StringComparison.Ordinal);
    }

    private void Later(double hours) => _cli.Clock.Advance(TimeSpan.FromHours(hours));

    private Answer Record(string[] readings)
    {
        var answer = _cli.Run(["record", .. readings, "--by", "op1", "--json"]);
        Accepted(answer);
        return answer;
    }

    private string Saved(string[] readings)
    {
        var answer = _cli.Run(["record", .. readings, "--by", "op1"]);
        Accepted(answer);
        return answer.Out;
    }

    /// <summary>Saved, and nothing said beside it but what a titration asks to be careful with.</summary>
    private static void Accepted(Answer answer)
    {
        Assert.Equal(0, answer.Code);
        Assert.All(answer.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries), l => Assert.Matches("^(CAUTION |  wear: |  source: )", l));
    }

    private static IEnumerable<JsonElement> Results(Answer answer) =>
        answer.Json.GetProperty("results").EnumerateArray().Where(r => r.TryGetProperty("point", out var p) && p.ValueKind == JsonValueKind.String);

    private static bool Has(Answer answer, string point) => Results(answer).Any(r => Text(r, "point") == point);

    private static JsonElement Result(Answer answer, string point) => Results(answer).Single(r => Text(r, "point") == point);

    private static IReadOnlyList<string> Findings(Answer answer, string code) =>
        [.. answer.Json.GetProperty("findings").EnumerateArray().Where(f => Text(f, "code") == code).Select(f => Text(f, "text"))];

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString() ?? "";
}
