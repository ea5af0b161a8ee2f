using Logbook.Handover;
using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook;

/// <summary>Results and findings in words.</summary>
internal static class Shown
{
    /// <summary>
    /// The value to as many decimals as its uncertainty (twice the standard one: about 95 of 100) is worth: one digit of that,
    /// two where the first is 1 or 2.
    /// </summary>
    public static string Of(double value, string unit, double? u, string? covers)
    {
        var named = unit.Length is 0 || unit.Equals("1", StringComparison.Ordinal) ? "" : " " + unit;
        if (u is not > 0)
        {
            return value.ToString("0.####", CultureInfo.InvariantCulture) + named;
        }

        var wide = 2 * u.Value;
        var size = Math.Floor(Math.Log10(wide));
        var digits = wide / Math.Pow(10, size) < 3 ? 2 : 1;
        var format = "F" + Math.Clamp(digits - 1 - (int)size, 0, 8).ToString(CultureInfo.InvariantCulture);
        var tail = covers is null ? "" : $", {covers}";
        return $"{value.ToString(format, CultureInfo.InvariantCulture)}{named} plus or minus {wide.ToString(format, CultureInfo.InvariantCulture)}{tail}";
    }

    /// <param name="site">Whose points say in words what a strength's unit means.</param>
    public static void Results(TextWriter output, Site? site, IReadOnlyList<Result> results)
    {
        foreach (var result in results)
        {
            var unit = result.Point is { } tag && site?.FindPoint(tag) is { } point && result.Unit == point.Unit.Name ? point.UnitInWords : result.Unit;
            output.WriteLine($"  {result.Name}, {result.Output}: {Of(result.Value, unit, result.U, result.Covers)}");
        }
    }

    // With so many a screen is not filled.
    private const int Few = 8;

    /// <summary>Of many results those that a finding speaks of, and those of points with limits as far as there is room; of a few all.</summary>
    public static IReadOnlyList<Result> ToLookAt(Site site, IReadOnlyList<Result> results, IReadOnlyList<Finding> findings)
    {
        if (results.Count <= Few)
        {
            return results;
        }

        var spoken = findings.Select(f => f.Point).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        List<Result> told = [.. results.Where(r => r.Point is { } tag && spoken.Contains(tag))];
        var judged = results.Except(told).Where(r => r.Point is { } tag && site.FindPoint(tag)?.Limits is { } limits && limits != Limits.None);
        return [.. results.Intersect(told.Concat(judged.Take(Math.Max(0, Few - told.Count))))];
    }

    public static void Findings(TextWriter output, IReadOnlyList<Finding> findings)
    {
        foreach (var finding in findings.OrderByDescending(f => f.Level))
        {
            output.WriteLine($"  {Json.Word(finding.Level),-6} {Say.Visible((finding.Point is null ? "" : finding.Point + ": ") + finding.Text)}");
        }
    }
}
