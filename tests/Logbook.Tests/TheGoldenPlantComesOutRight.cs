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

    private static JsonElement Result(Answer answer, string point)
    {
        Assert.Equal(0, answer.Code);
        return answer.Json.GetProperty("results").EnumerateArray().Single(r => r.TryGetProperty("point", out var p) && p.GetString() == point);
    }
}
