using System.Globalization;
using System.Text;

namespace CrossExamination.Tests.Examining;

/// <summary>What was measured, as tables.</summary>
internal static class Tables
{
    public static string Of(string title, Evaluation e)
    {
        var text = new StringBuilder();
        void Line(FormattableString line) => text.AppendLine(line.ToString(CultureInfo.InvariantCulture));
        Line($"{title}");
        Line($"clean flagged {e.CleanFlagged:F1} %, clean named {e.CleanAccused:F1} %");
        Line($"named at the first {e.All.First:F1}, by the third {e.All.Third:F1}; alone {e.All.FirstAlone:F1}, {e.All.ThirdAlone:F1}; seen {e.All.SeenFirst:F1}, {e.All.Seen:F1}");
        Line($"names right {e.All.NamesRight:F1}, first name {e.All.FirstNamesRight:F1}; in group {e.All.InGroup:F1}, mean size {e.All.MeanGroup:F2}");
        var (keep, broken) = (Steps.Sum(e.Keeping.Values), Steps.Sum(e.Breaking.Values));
        Line($"plant steps accused {keep.First:F1} / {keep.Any:F1}; physics-breaking, reading alone {broken.First:F1} / {broken.Any:F1}; double, sound one named {e.Double.First:F1} / {e.Double.Any:F1}");
        Line($"thresholds {string.Join(' ', e.Last!.Fitted.Thresholds.Select(t => t.ToString("F1", CultureInfo.InvariantCulture)))}, left out {e.Last.Fitted.LeftOut:P1}");
        Line($"shares: {Calibration(e)}");
        foreach (var kind in e.ByKind.OrderBy(k => k.Key.Size).GroupBy(k => k.Key.Kind, StringComparer.Ordinal))
        {
            Line($"  {kind.Key,-32} {string.Join("   ", kind.Select(k => string.Create(CultureInfo.InvariantCulture, $"{k.Value.First,3:F0} {k.Value.Third,3:F0} {k.Value.Seen,3:F0} {k.Value.NamesRight,3:F0}")))}");
        }

        foreach (var step in e.Keeping.Concat(e.Breaking))
        {
            Line($"  {step.Key,-32} {step.Value.First,4:F1} {step.Value.Any,4:F1}");
        }

        return text.ToString();
    }

    /// <summary>For each band of shares the mean share and how often it was right.</summary>
    private static string Calibration(Evaluation e) => string.Join("; ", e.All.Given
        .GroupBy(g => Math.Min(9, (int)(g.Share * 10))).OrderBy(g => g.Key)
        .Select(g => string.Create(CultureInfo.InvariantCulture, $"{100 * g.Average(x => x.Share):F0}->{100.0 * g.Count(x => x.Right) / g.Count():F0} ({g.Count()})")));
}
