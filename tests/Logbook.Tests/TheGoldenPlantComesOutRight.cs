using System.Text.Json;

namespace Logbook.Tests;

/// <summary>
/// One worked plant, through the command line. Its figures follow from stoichiometry (IUPAC conventional atomic weights) and
/// from the heat balance with the CRC Handbook's formation enthalpies: 1150 kJ/kg CaO.
/// 300 m3/h green liquor at 90 degC, TTA 120 g/L as Na2O, sulphidity 25 % on TTA, causticity 15 to 82 %, lime 88 % CaO.
/// </summary>
public sealed class TheGoldenPlantComesOutRight : IDisposable
{
    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void A_white_liquor_titration_gives_its_causticity_with_an_uncertainty()
    {
        // 0.5 N acid, 5 mL liquor: 100 (2A - B) / (2A + C - 2B), computed from IUPAC atomic weights.
        var answer = _cli.Run("record", "WL-A=29.3667", "WL-B=34.3273", "WL-C=39.6847", "--by", "op1", "--json");

        var result = Result(answer, "WL-CE");
        Assert.Equal(82.00, result.GetProperty("value").GetDouble(), 2);
        Assert.InRange(result.GetProperty("u").GetDouble(), 0.05, 0.3);
    }

    [Fact]
    public void The_hourly_readings_give_the_temperature_that_the_lime_should_make()
    {
        var answer = _cli.Run("record", "SL-T1=100.3", "GC-T2=90.0", "SL-F1=300", "LM-F1=18.60", "LM-N1=50", "LM-CAO=88.0", "LM-T=60", "--by", "op1", "--json");

        // 18.60 t/h at 88 % in 300 m3/h: 18.60 * 0.88 * 1000 / 300 = 54.56 kg CaO per m3.
        Assert.Equal(54.56, Result(answer, "SL-CAO").GetProperty("value").GetDouble(), 2);
        Assert.InRange(Result(answer, "SL-TX").GetProperty("value").GetDouble(), 100.0, 100.6);
        Assert.True(Result(answer, "SL-TX").GetProperty("u").GetDouble() > 0.1);
    }

    [Fact]
    public void The_grits_of_a_shift_are_one_per_cent_of_the_lime()
    {
        // 1 % of 18.60 t/h is 186 kg/h dry: in 12 h 2232 kg, weighed wet at 80 % solids 2790 kg.
        _cli.Run("record", "LM-F1=18.60", "--by", "op1");
        var answer = _cli.Run("record", "CL-G=2790", "CL-GH=12", "CL-GS=80", "--by", "op1", "--json");

        Assert.Equal(1.00, Result(answer, "CL-GP").GetProperty("value").GetDouble(), 2);
        Assert.True(Result(answer, "CL-GP").GetProperty("u").GetDouble() > 0);
    }

    /// <summary>
    /// The whole plant at once, laboratory figures at 25 degC: the hot ones times the ratio of the densities (1.0354 for green
    /// liquor of 120 g/L from 90 degC, 1.0447 for white of 123 g/L from 100 degC; Laliberte 2009, J. Chem. Eng. Data 54, 1725).
    /// Everything agrees: no doubt, no short last tank, no lime too much.
    /// </summary>
    [Fact]
    public void The_whole_plant_agrees_with_itself()
    {
        var findings = Findings(After(Steady));

        Assert.DoesNotContain(findings, f => f.Point is "SL-TX" or "SL-CAO" or "WL-TTAX" or "CA-OVER" or "C3-DIST" or "C3-CEX");
    }

    // What follows is what a lead operator would say: common practice, no source.
    [Fact]
    public void A_tenth_more_lime_is_over_limed_and_the_last_tank_is_not_blamed_before_the_liquor_is_there()
    {
        var findings = Findings(After(With("LM-F1=20.46", "LM-N1=34.1", "SL-T1=101.7")));

        Assert.Contains(findings, f => f is { Point: "CA-OVER", Level: "watch" });
        Assert.Contains(findings, f => f.Point == "CA-FREEX" && f.Words.Contains("slower settling", StringComparison.Ordinal));
        Assert.DoesNotContain(findings, f => f.Point is "C3-DIST" or "C3-CEX");
    }

    [Fact]
    public void Hotter_green_liquor_is_an_urgent_matter_before_the_slaker_follows_and_when_it_has()
    {
        Assert.Contains(Findings(After(With("GC-T2=95"))), f => f is { Point: "GC-T2", Level: "urgent" });
        Assert.Contains(Findings(After(With("GC-T2=95", "SL-T1=105.2"))), f => f is { Point: "SL-MARGIN", Level: "urgent" });
    }

    [Fact]
    public void A_second_end_point_read_a_millilitre_too_high_shows_as_sulphide_that_lime_cannot_make()
    {
        var answer = After(With("WL-B=36.862"));

        // 100 (2A - B) / (2A + C - 2B) with B one too high.
        Assert.Equal(84.20, Result(answer, "WL-CE").GetProperty("value").GetDouble(), 2);
        Assert.Contains(Findings(answer), f => f.Words.Contains("end point b of one titration", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_is_computed_from_an_earlier_titration_when_this_one_cannot_be()
    {
        var answer = After(With("GL-A=40", "GL-B=35", "GL-C=30"));

        Assert.DoesNotContain(
            answer.Json.GetProperty("results").EnumerateArray(),
            r => r.TryGetProperty("point", out var p) && p.GetString() is "GL-TTA" or "SL-CAOX" or "SL-LIMEX" or "SL-LR" or "CA-EQ");
        Assert.Contains(Findings(answer), f => f.Words.Contains("below GL-A 40.00 mL", StringComparison.Ordinal));
    }

    private static readonly string[] Steady =
    [
        "LB-N=0.5", "GL-A=9.522", "GL-B=14.534", "GL-C=40.094", "WL-A=30.679", "WL-B=35.862", "WL-C=41.459", "SO-A=28.8", "SO-B=34.0", "SO-C=41.4",
        "C3-A=30.6", "C3-B=35.8", "C3-C=41.45", "SL-T1=100.3", "GC-T1=98", "GC-T2=90", "SL-F1=300", "LM-F1=18.60", "LM-N1=31", "LM-CAO=88", "LM-T=60",
        "CA-T1=100.5", "CA-T2=100", "CA-T3=99.5", "CA-L1=80", "CA-L2=80", "CA-L3=80", "GT-L=60",
    ];

    private static string[] With(params string[] changed) =>
        [.. Steady.Where(s => !changed.Any(c => c.Split('=')[0] == s.Split('=')[0])), .. changed];

    /// <summary>The readings after three hours in which the plant stood as it is.</summary>
    private static Answer After(string[] readings)
    {
        using var cli = new Cli();
        foreach (var hours in new[] { 3, 2 })
        {
            Assert.Equal(0, cli.Run(["record", .. Steady, "--by", "op1", "--at", $"2026-11-25T{10 - hours:00}:00"]).Code);
        }

        return cli.Run(["record", .. readings, "--by", "op1", "--json"]);
    }

    private static (string? Point, string Level, string Words)[] Findings(Answer answer)
    {
        Assert.Equal(0, answer.Code);
        return [.. answer.Json.GetProperty("findings").EnumerateArray().Select(f => (
            f.TryGetProperty("point", out var point) ? point.GetString() : null, f.GetProperty("level").GetString()!, f.GetProperty("text").GetString()!))];
    }

    private static JsonElement Result(Answer answer, string point)
    {
        Assert.Equal(0, answer.Code);
        return answer.Json.GetProperty("results").EnumerateArray().Single(r => r.TryGetProperty("point", out var p) && p.GetString() == point);
    }
}
