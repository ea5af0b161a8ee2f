namespace Logbook.Checks.CrossExamination;

/// <summary>The covariances in use.</summary>
internal sealed record Views(Factors Quiet, Factors Changed);

/// <summary>Some places of one entry, weighed by one covariance.</summary>
internal sealed class View
{
    private readonly Factor _factor;
    private readonly int[] _index;
    private readonly double[] _weighed;

    private View(Factor factor, int[] places, double[] scaled)
    {
        _factor = factor;
        _index = [.. Enumerable.Repeat(-1, scaled.Length)];
        for (var i = 0; i < places.Length; i++)
        {
            _index[places[i]] = i;
        }

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
    /// <param name="touched">The places that it moves, and how far, scaled.</param>
    public Tried Try(ReadOnlySpan<(int Place, double By)> touched)
    {
        Span<(int Index, double Value)> here = stackalloc (int, double)[touched.Length];
        var (count, match) = (0, 0.0);
        foreach (var (place, by) in touched)
        {
            if (_index[place] >= 0)
            {
                here[count++] = (_index[place], by);
                match += by * _weighed[_index[place]];
            }
        }

        return new Tried(match, _factor.Square(here[..count]));
    }
}
