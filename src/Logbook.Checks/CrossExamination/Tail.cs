namespace Logbook.Checks.CrossExamination;

/// <summary>
/// The far end of a distribution, taken as exponential beyond the upper tenth: steadier than counting the few values out there.
/// </summary>
internal sealed record Tail(double From, double Mean)
{
    /// <summary>The share of all values that belongs to the tail.</summary>
    public const double Share = 0.1;

    public static Tail Of(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        var from = sorted[(int)((1 - Share) * (sorted.Count - 1))];
        return new Tail(from, sorted.Where(v => v > from).Select(v => v - from).DefaultIfEmpty(0).Average());
    }

    /// <summary>What this share of all values exceeds; the share is at most a tenth.</summary>
    public double Exceeded(double share) => From + (Mean * Math.Log(Share / share));
}
