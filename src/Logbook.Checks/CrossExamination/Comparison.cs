using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>Two estimates of one quantity, as a function of what they hang on.</summary>
/// <param name="Name">The quantity and the two ways.</param>
/// <param name="Inputs">In the order in which the difference takes them; a method is an input whose value is zero.</param>
/// <param name="Difference">One estimate less the other, each method's error added to its own.</param>
internal sealed record Comparison(string Name, IReadOnlyList<ComparisonInput> Inputs, Func<Vector<double>, double> Difference)
{
    /// <summary>The row at an hour; null when an input is missing, gives no number, or nothing in it is new.</summary>
    /// <param name="pasts">The readings.</param>
    /// <param name="typed">For each parameter the constant that is typed for it; zero for a method.</param>
    /// <param name="hours">The time of the entry.</param>
    public RowReading? At(Pasts pasts, IReadOnlyList<double> typed, double hours)
    {
        var values = Vector<double>.Build.Dense(Inputs.Count);
        var parts = new IReadOnlyList<Past>[Inputs.Count];
        for (var j = 0; j < Inputs.Count; j++)
        {
            parts[j] = Inputs[j].Read ? pasts.At(Inputs[j], hours) : [new Past(typed[Inputs[j].Parameter], 1, 0)];
            if (parts[j].Count == 0)
            {
                return null;
            }

            values[j] = parts[j].Sum(p => p.Value * p.Weight);
        }

        var difference = Difference(values);
        if (!double.IsFinite(difference) || !Fresh(parts))
        {
            return null;
        }

        var slopes = Jacobian.Of(v => Vector<double>.Build.Dense(1, Difference(v)), values);
        return slopes.Enumerate().All(double.IsFinite)
            ? new RowReading(difference, [.. Inputs.SelectMany((input, j) => parts[j].Select(p => new Sensitivity(input.Parameter, slopes[0, j] * p.Weight, p.Back, input.Lag)))])
            : null;
    }

    /// <summary>
    /// A row has something to say when all readings that it takes as they are now were taken in this entry: a titration that is
    /// carried on from hour to hour is one witness, not many.
    /// </summary>
    private bool Fresh(IReadOnlyList<Past>[] parts) => Inputs.Select((input, j) => !input.Read || input.Lag > 0 || input.Background || parts[j][0].Back == 0).All(f => f);
}

/// <summary>One input of a comparison.</summary>
/// <param name="Parameter">What it is.</param>
/// <param name="Read">True for a reading, false for a constant or method.</param>
/// <param name="Lag">Hours before.</param>
/// <param name="Stale">How old a value may be, in hours.</param>
internal sealed record ComparisonInput(int Parameter, bool Read, double Lag = 0, double Stale = 4)
{
    /// <summary>True for a reading that is taken seldom and stands until the next: it need not be new.</summary>
    public bool Background { get; init; }
}
