using Logbook.Checks;
using Logbook.Contracts;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Testing;

/// <summary>Small things for tests: a site, its calculations, readings, a desk on a journal in memory.</summary>
public static class Some
{
    /// <summary>A quiet moment of a day shift, in site time.</summary>
    public static readonly DateTimeOffset Morning = new(2026, 3, 3, 9, 0, 0, TimeSpan.FromHours(-5));

    public static SiteFiles Files => Changed();

    public static Site Site => SiteReader.Read(Files).Value!;

    /// <summary>The site's files with words replaced in site.toml or points.csv.</summary>
    public static SiteFiles Changed(params (string Old, string New)[] words)
    {
        string With(string text) => words.Aggregate(text, (t, w) => t.Replace(w.Old, w.New, StringComparison.Ordinal));
        return new SiteFiles(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            [SiteFiles.SiteToml] = With(SomeFiles.Site),
            [SiteFiles.PointsCsv] = With(SomeFiles.Points),
            [SiteFiles.CautionsToml] = SomeFiles.Cautions,
        });
    }

    /// <summary>Causticity 100 NaOH / (NaOH + Na2CO3), with NaOH = 2A - B and Na2CO3 = C - B in mL of acid.</summary>
    public static Formula EndPoints { get; } = new(
        "end-points",
        [new("a", "mL", "end point A", 0, 100), new("b", "mL", "end point B", 0, 100) { CountsOnFrom = "a" }, new("c", "mL", "end point C", 0, 100) { CountsOnFrom = "b" }],
        [new("causticity", "%", "NaOH of NaOH and Na2CO3")],
        i => i["b"] < i["a"] ? new Refused("b", "b lies before a; end points are cumulative")
            : i["b"] > 2 * i["a"] ? new Refused("b", FormattableString.Invariant($"b ({i["b"]} mL) is more than twice a ({i["a"]} mL), which would leave less than no hydroxide"))
            : i["c"] <= i["b"] ? new Refused("c", "c lies not after b; end points are cumulative")
            : Formula.Give(("causticity", 100 * ((2 * i["a"]) - i["b"]) / ((2 * i["a"]) - i["b"] + i["c"] - i["b"]))));

    public static Formula Dose { get; } = new(
        "dose",
        [new("lime", "t/h", "lime fed", 0, 100), new("cao", "%", "available CaO", 1, 100), new("flow", "m3/h", "green liquor", 1, 1000)],
        [new("dose", "kg/m3", "CaO per m3 of green liquor") { Estimates = "cao-dose" }],
        i => Formula.Give(("dose", 10 * i["lime"] * i["cao"] / i["flow"])) with { Notes = i["lime"] > 22 ? ["a high dose: over-liming, or a high flow read low; take a sample"] : [] });

    public static Formula Margin { get; } = new(
        "margin",
        [new("temperature", "degC", "slaker", 0, 120), new("boiling", "degC", "boiling point", 90, 120)],
        [new("margin", "K", "what is left to boiling")],
        i => Formula.Give(("margin", i["boiling"] - i["temperature"])));

    public static IReadOnlyList<LoadedCalculation> Calculations { get; } = [EndPoints.Loaded, Dose.Loaded, Margin.Loaded];

    public static Desk Desk(
        TimeProvider clock, IJournalStore? journal = null, SiteFiles? files = null, IReadOnlyList<LoadedCalculation>? calculations = null, IGuard? guard = null) =>
        new(journal ?? new InMemoryJournal(), files ?? Files, calculations ?? Calculations, guard ?? new InlineGuard(), clock, "host:tty1");

    /// <summary>Puts the desk's files in force, signed as everywhere: by the PIN of <paramref name="by"/>, which costs nothing here.</summary>
    public static Handed Adopt(Desk desk, string why, string by = "eng1")
    {
        const string pin = "274951";
        var pins = new Pins(new PinsInMemory(), rounds: 1);
        pins.Set(by, pin);
        return SignedWriting.Adopt(desk, new SignWith(pins, _ => pin), why, by);
    }

    public static TypedReading Reading(string point, string text) => new(point, text, Place.Unknown);

    /// <summary>An entry of <c>POINT=VALUE[ UNIT]</c> each, by op1.</summary>
    public static EntryRequest Entry(params string[] readings) =>
        new("op1", [.. readings.Select(r => r.Split('=', 2)).Select(p => Reading(p[0], p[1]))]);
}
