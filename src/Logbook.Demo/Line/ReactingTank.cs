namespace Logbook.Demo.Line;

/// <summary>A stirred tank at constant level in which lime and carbonate react towards equilibrium.</summary>
/// <param name="volume">m3.</param>
/// <param name="rate">Share of what is left to react that reacts in an hour.</param>
internal sealed class ReactingTank(double volume, double rate, Slurry start)
{
    /// <summary>Conditional constant [OH]^2/[CO3], kmol/m3: lies on the kraft equilibrium curves within two points, from memory.</summary>
    public const double EquilibriumConstant = 55;

    public Slurry Content { get; private set; } = start;

    /// <summary>m3.</summary>
    public double Volume => volume;

    /// <summary>Displacement by <paramref name="flow"/> m3/h (as green liquor) for a step, then reaction.</summary>
    public Slurry Step(Slurry inflow, double flow, double dtHours)
    {
        var share = flow * dtHours / volume;
        var outflow = Content;
        Content += (inflow - outflow) * share;
        Content = Content.React(Content.ToReact(EquilibriumConstant) * (1 - Math.Exp(-rate * dtHours)));
        return outflow;
    }
}
