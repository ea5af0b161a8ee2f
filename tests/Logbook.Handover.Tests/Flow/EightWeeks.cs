using System.Globalization;
using Logbook.Checks;
using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Handover.Tests;

/// <summary>Nine weeks of a line with one round of eight points, read each second hour by two people who hand over to each other by PIN.</summary>
internal static class EightWeeks
{
    private const int Points = 8;
    private static readonly DateTimeOffset Begin = SmallLine.At("2026-03-02T07:05-05:00");

    /// <param name="copied">Numbers of the walks that repeat the one before.</param>
    /// <param name="policy">Lines of [policy]; none when empty.</param>
    public static FlowLine Write(string policy, params int[] copied)
    {
        var flow = new FlowLine(new SmallLine(Begin, Files(policy), []));
        flow.HeldBy("op1");
        var chance = new Random(7);
        double[] values = [];
        for (var walk = 0; walk < 9 * 7 * 12; walk++)
        {
            var at = Begin.AddHours(2 * walk).AddMinutes(3);
            if (walk > 0 && walk % 6 == 0)
            {
                flow.Line.Clock(at.AddMinutes(-2));
                flow.HandedTo(flow.Holder == "op1" ? "op2" : "op1");
            }

            flow.Line.Clock(at);
            values = copied.Contains(walk) ? values : [.. Enumerable.Range(0, Points).Select(_ => 40 + (20 * chance.NextDouble()))];
            flow.Line.Record(new EntryRequest(flow.Holder!, [.. values.Select((v, p) => Some.Reading($"P-{p}", v.ToString("F1", CultureInfo.InvariantCulture)))]) { Round = "walk" });
        }

        return flow;
    }

    private static SiteFiles Files(string policy)
    {
        var tags = Enumerable.Range(0, Points).Select(p => $"P-{p}").ToList();
        const string more = """
            [[person]]
            code = "op2"
            name = "Operator two"
            role = "operator"
            crew = "C"

            [[person]]
            code = "sup1"
            name = "Supervisor one"
            role = "supervisor"

            """;
        var round = $"[[round]]\nid = \"walk\"\ntitle = \"Walk\"\nevery = \"2h\"\npoints = [{string.Join(", ", tags.Select(t => $"\"{t}\""))}]\n";
        return new SiteFiles(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            [SiteFiles.SiteToml] = Some.Files.Texts[SiteFiles.SiteToml].Split("[[round]]")[0] + more + round + policy,
            [SiteFiles.PointsCsv] = "tag,description,area,unit,kind,decimals,lowest,highest\n" + string.Concat(tags.Select(t => $"{t},Point {t},site,%,read,1,0,100\n")),
            [SiteFiles.CautionsToml] = "",
        });
    }
}
