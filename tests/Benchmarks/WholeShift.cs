using System.Globalization;
using Logbook.Checks;
using Logbook.Checks.Examining;
using Logbook.Journal;
using Logbook.Plant;

namespace Benchmarks;

/// <summary>One entry that moves every calculation of the starter site, after a journal that holds all they take beside it.</summary>
internal sealed class WholeShift
{
    // Each of the 42 changes something; the figures are those of an ordinary hour.
    private const string Readings =
        "GL-A=9.52 GL-B=14.53 GL-C=40.09 WL-A=30.65 WL-B=35.85 WL-C=41.45 WW-A=23.2 WW-B=27.3 WW-C=31.3 "
        + "SO-A=27.6 SO-B=32.8 SO-C=41.6 C3-A=30.6 C3-B=35.8 C3-C=41.4 CL-G=2790 CL-GH=12.0 CL-GS=80 DR-S=45 MF-S=78 "
        + "SL-T1=100.3 GC-T2=88.0 SL-F1=300 LM-F1=18.60 LM-CAO=88.0 RG-D=1137 RG-T=93 RG-L=52 GT-L=70 GF-F=300 "
        + "GC-T1=93.0 WF-F=278 WT-F=278 WT-L=62 MT-D=1215 MT-L=55 MF-F=92 WW-D=1003 WW-L=55 CA-L1=88 CA-L2=86 CA-L3=84";

    private const string Beside = " LB-N=0.5000 LM-T=60 RG-F=300 RG-DR=950 GF-CL=12 GF-CS=23 DR-F=12.0 DR-M=15.0 GC-P=58.0 GC-FC=2.50 "
        + "LM-N1=31.0 GF-DP=0.60 WF-DP=1.10 WF-T=93 WF-W=25 WF-S=66 WW-T=70 WW-F=100 DT-D=1137";

    private readonly Desk _desk;
    private readonly EntryRequest _entry;
    private readonly Entry _judged;

    public WholeShift(Desk desk)
    {
        _desk = desk;
        foreach (var hours in new[] { 8, 4, 3 }) // liquor and lime of the hours that lagged inputs are taken from
        {
            var saved = RecordEntry.Run(desk, Request(Readings + Beside, lastDigit: hours) with { At = desk.Now.AddHours(-hours) });
            Must(saved.Record is not null, saved.Mistakes.Select(m => m.ToString()));
        }

        _entry = Request(Readings);
        var entry = RecordEntry.Judge(desk, _entry);
        var ran = entry.Value?.Results.Select(r => r.Name).ToHashSet(StringComparer.Ordinal) ?? [];
        Must(_entry.Readings.Count == 42, [$"{_entry.Readings.Count} readings"]);
        Must(desk.Site.Calculations.All(c => ran.Contains(c.Name)),
            desk.Site.Calculations.Where(c => !ran.Contains(c.Name)).Select(c => c.Name).Concat(entry.Value?.Findings.Select(f => f.Text) ?? []));
        Calculations = ran.Count;
        _judged = entry.Value!;
    }

    public int Calculations { get; }

    /// <summary>How many pairs of estimates of one thing the entry compares.</summary>
    public int Compared => _desk.Examinations.Of(Day.Today(_desk), Sheet) is { } trail ? trail.Last[^1].Frame.Rows.Count : 0;

    /// <summary>The entry against the relations of the site and the hours before it, as when it is saved.</summary>
    public IReadOnlyList<Finding> Examine() => CrossExamined.Findings(Day.Today(_desk), Sheet);

    public void Judge() => Must(RecordEntry.Judge(_desk, _entry).Value is not null, []);

    private Sheet Sheet => Sheet.Of(Sheet.NotYet, _desk.Now, _judged);

    private static EntryRequest Request(string readings, int lastDigit = 0) => new(
        "op1", [.. readings.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(r => r.Split('=')).Select(r => new TypedReading(r[0], Other(r[1], lastDigit), Place.Unknown))]);

    /// <summary>The same with another last digit: readings that never change are looked into further, which is not what is timed here.</summary>
    private static string Other(string number, int by)
    {
        var value = decimal.Parse(number, CultureInfo.InvariantCulture);
        return (value + new decimal(by, 0, 0, isNegative: false, value.Scale)).ToString(CultureInfo.InvariantCulture);
    }

    private static void Must(bool holds, IEnumerable<string> why)
    {
        if (!holds)
        {
            throw new InvalidOperationException("the benchmark's entry does not run every calculation: " + string.Join("; ", why));
        }
    }
}
