using System.Text.Json;

namespace Logbook.Tests;

/// <summary>Input that cannot be, to every calculation there is: one sentence that names the role, and nothing else.</summary>
public sealed class TheImpossibleIsRefused : IDisposable
{
    private readonly Cli _cli = new();

    /// <summary>Calculation, what is typed, and the role that must be named.</summary>
    private static readonly IReadOnlyList<(string Id, string Typed, string Role)> Impossible =
    [
        ("acid-strength", "soda-ash=0 acid-volume=20", "soda-ash"),
        ("alkali-titration", "a=29 b=28 c=39 acid=0.5 sample=5", "b"),
        ("available-lime", "acid-volume=500 acid=1 sample=1", "acid-volume"),
        ("boiling-margin", "slaker-temperature=100 tta=500", "tta"),
        ("cake-soda", "dry-solids=0 liquor-tta=2", "dry-solids"),
        ("causticity", "a=20 b=45 c=50", "b"),
        ("causticizing-train", "inlet-causticity=95 equilibrium=88 flow=300 volume-1=200 volume-2=200 volume-3=200", "inlet-causticity"),
        ("dissolving-tank-trim", "tta=120 target-tta=15 weak-wash-tta=20 flow=300", "weak-wash-tta"),
        ("dregs-balance", "flow=300 raw-dregs=10 filtrate-dregs=900", "filtrate-dregs"),
        ("equilibrium-causticity", "tta=120 sulphidity-tta=25 gl-causticity=95", "gl-causticity"),
        ("filter-permeability", "flow=300 area=300 pressure-difference=0 temperature=90", "pressure-difference"),
        ("flash-cooling", "flow=300 inlet=85 outlet=95 tta=120", "outlet"),
        ("free-lime", "cao-dose=55 na2co3=76 equilibrium-conversion=0", "equilibrium-conversion"),
        ("green-liquor-density", "density=955 temperature=20", "density"),
        ("grits-rate", "grits=100 period=12 lime=0", "lime"),
        ("lime-dose", "tta=120 sulphidity-tta=25 gl-causticity=15 target-causticity=10 available-cao=88", "target-causticity"),
        ("lime-feed", "lime=18.6 available-cao=88 flow=0", "flow"),
        ("lime-from-causticity", "tta=120 sulphidity-tta=25 gl-causticity=15 causticity=10", "causticity"),
        ("mud-from-lime", "flow=300 cao-dose=50 free-cao=60 inert=7 grits=1", "free-cao"),
        ("mud-solids", "density=950", "density"),
        ("mud-to-kiln", "flow=90 density=1200 storage-change=-50", "storage-change"),
        ("mud-washing", "wash=25 underflow=0 inlet-tta=120", "underflow"),
        ("reduction", "na2s=0 na2so4=0", "na2s"),
        ("residence-time", "level=50 capacity=200 flow=0", "flow"),
        ("slaker-temperature-rise", "gl-temperature=90 cao-dose=55 available-cao=0", "available-cao"),
        ("slaking-reactivity", "start=20 after-3min=60 final=50 complete=8", "final"),
        ("soda-across-slaker", "gl-tta=0 gl-sulphidity-tta=25", "gl-tta"),
        ("tank-reserve", "level=50 capacity=3000 heel=60 full=50", "heel"),
        ("weak-wash-density", "density=960 temperature=20", "density"),
        ("white-liquor-yield", "gl-flow=300 wl-flow=280 mud=31 cake-solids=0", "cake-solids"),
    ];

    public static TheoryData<string, string, string> Table
    {
        get
        {
            var table = new TheoryData<string, string, string>();
            foreach (var (id, typed, role) in Impossible)
            {
                table.Add(id, typed, role);
            }

            return table;
        }
    }

    public void Dispose() => _cli.Dispose();

    [Theory]
    [MemberData(nameof(Table))]
    public void By_hand_it_is_one_sentence_and_exit_code_2(string id, string typed, string role)
    {
        var answer = _cli.Run(["calc", "run", id, .. typed.Split(' ')]);

        Assert.Equal((2, ""), (answer.Code, answer.Out));
        Assert.StartsWith(role + " ", Assert.Single(answer.Lines), StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_leaves_no_calculation_out() => Assert.Equal(
        _cli.Run("calc", "list", "--json").Json.GetProperty("calculations").EnumerateArray().Select(c => c.GetProperty("id").GetString()).Order(StringComparer.Ordinal),
        Impossible.Select(i => i.Id).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("order", "WL-B", "WL-A=29", "WL-B=28", "WL-C=39.7")]
    [InlineData("refused", "SL-F1", "LM-F1=18.6", "LM-CAO=88", "SL-F1=0")]
    [InlineData("refused", "GC-T2", "SL-F1=300", "GC-T1=85", "GC-T2=95", "RG-D=1137", "RG-T=93", "GC-P=58", "GC-FC=2.5")]
    public void From_a_round_it_is_a_finding_and_the_readings_are_saved(string code, string point, params string[] readings)
    {
        var answer = _cli.Run(["record", .. readings, "--by", "op1", "--json"]);

        Assert.Equal(0, answer.Code);
        Assert.Contains(answer.Json.GetProperty("findings").EnumerateArray(), f => Text(f, "code") == "calculation." + code && Text(f, "point") == point);
        foreach (var reading in readings)
        {
            var (tag, value) = (reading.Split('=')[0], reading.Split('=')[1]);
            Assert.Equal(value, Text(Assert.Single(_cli.Run("list", tag, "--json").Json.GetProperty("list").EnumerateArray()), "typed"));
        }
    }

    private static string? Text(JsonElement element, string name) => element.GetProperty(name).GetString();
}
