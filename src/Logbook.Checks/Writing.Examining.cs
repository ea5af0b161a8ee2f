using Logbook.Checks.Examining;

namespace Logbook.Checks;

public static partial class Writing
{
    /// <summary>Learns from the entries of [<paramref name="from"/>, <paramref name="to"/>) what to expect of the line, and puts it in force.</summary>
    public static Written AdoptFit(Desk desk, DateTimeOffset from, DateTimeOffset to, string why, string by) => Fitting.Adopt(desk, from, to, why, by);
}
