namespace Logbook.Checks.CrossExamination;

/// <summary>The covariances in use.</summary>
internal sealed record Views(Factors Quiet, Factors Changed);

/// <summary>Some places of one entry, weighed by one covariance.</summary>
internal sealed class View
{
    private readonly Factor _factor;
    private readonly int[] _places;
    private readonly double[] _weighed;

    private View(Factor factor, int[] places, double[] scaled)
    {
        (_factor, _places) = (factor, places);
        double[] there = [.. places.Select(p => scaled[p])];
        _weighed = factor.Weigh(there);
        Square = Factor.Dot(there, _weighed);
        Base = -(factor.LogDeterminant / 2) - (Square / 2);
    }

    /// <summary>Squared length of the surprises in their own spread.</summary>
    public double Square { get; }

    /// <summary>The logarithm of how likely the surprises are when nothing is wrong, but for a constant.</summary>
    public double Base { get; }

    /// <returns>Null when nothing speaks, or the covariance of what speaks is singular.</returns>
    public static View? Of(Factors factors, int[] places, double[] scaled) =>
        places.Length > 0 && factors.Of(places) is { } factor ? new View(factor, places, scaled) : null;

    /// <summary>How a hypothesis matches the surprises.</summary>
    /// <param name="moved">How far it moves each place, scaled.</param>
    public Tried Try(ReadOnlySpan<double> moved)
    {
        Span<(int Index, double Value)> here = stackalloc (int, double)[_places.Length];
        var (count, match) = (0, 0.0);
        for (var i = 0; i < _places.Length; i++)
        {
            if (moved[_places[i]] is var by && by != 0)
            {
                here[count++] = (i, by);
                match += by * _weighed[i];
            }
        }

        return new Tried(match, _factor.Square(here[..count]));
    }
}
