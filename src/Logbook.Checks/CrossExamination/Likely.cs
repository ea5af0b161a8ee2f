namespace Logbook.Checks.CrossExamination;

/// <summary>How likely entries are, as logarithms but for a constant: the plant runs as usual, or is being moved.</summary>
internal static class Likely
{
    private static readonly double LogUsual = Math.Log(0.9);
    private static readonly double LogMoved = Math.Log(0.1);

    /// <param name="quiet">With the plant as usual.</param>
    /// <param name="changed">With the plant being moved.</param>
    public static double Either(double quiet, double changed) => Sum([LogUsual + quiet, LogMoved + changed]);

    /// <summary>The logarithm of the sum of what these are logarithms of.</summary>
    public static double Sum(IReadOnlyList<double> logs)
    {
        var most = logs.Max();
        return most + Math.Log(logs.Sum(l => Math.Exp(l - most)));
    }
}
