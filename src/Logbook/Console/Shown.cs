using Logbook.Handover;
using System.Globalization;
using Logbook.Journal;

namespace Logbook;

/// <summary>Results and findings in words.</summary>
internal static class Shown
{
    /// <summary>The value to as many decimals as its uncertainty (twice the standard one: about 95 of 100) is worth.</summary>
    public static string Of(double value, string unit, double? u, string? covers)
    {
        if (u is not > 0)
        {
            return $"{value.ToString("0.####", CultureInfo.InvariantCulture)} {unit}";
        }

        var wide = 2 * u.Value;
        var decimals = Math.Clamp(-(int)Math.Floor(Math.Log10(wide)), 0, 8);
        var format = "F" + decimals.ToString(CultureInfo.InvariantCulture);
        var tail = covers is null ? "" : $", {covers}";
        return $"{value.ToString(format, CultureInfo.InvariantCulture)} {unit} plus or minus {wide.ToString(format, CultureInfo.InvariantCulture)}{tail}";
    }

    public static void Results(TextWriter output, IReadOnlyList<Result> results)
    {
        foreach (var result in results)
        {
            output.WriteLine($"  {result.Name}, {result.Output}: {Of(result.Value, result.Unit, result.U, result.Covers)}");
        }
    }

    public static void Findings(TextWriter output, IReadOnlyList<Finding> findings)
    {
        foreach (var finding in findings.OrderByDescending(f => f.Level))
        {
            output.WriteLine($"  {Json.Word(finding.Level),-6} {Say.Visible((finding.Point is null ? "" : finding.Point + ": ") + finding.Text)}");
        }
    }
}
