namespace Logbook.Checks.CrossExamination;

/// <summary>
/// What is left of a vector as surprise: less what each place's own past lets expect, and less the errors of readings that the
/// entries before showed. An error that stays passes through it as the readings do, and shows how it looks afterwards.
/// </summary>
internal sealed class Filter
{
    private readonly IReadOnlyList<double> _scale;
    private readonly Standing _standing;
    private readonly Errors _errors;

    public Filter(IReadOnlyList<Forecast> forecasts, IReadOnlyList<double> scale)
        : this(scale, new Standing(forecasts), new Errors())
    {
    }

    private Filter(IReadOnlyList<double> scale, Standing standing, Errors errors) => (_scale, _standing, _errors) = (scale, standing, errors);

    public Filter Copy() => new(_scale, _standing.Copy(), _errors.Copy());

    /// <summary>What a row has beyond the errors that are expected in what it takes again.</summary>
    public double Beyond(Again[] takes, double value) => value - _errors.In(takes);

    /// <param name="round">The entry.</param>
    /// <param name="heard">Which of its places, and what they tell of errors.</param>
    /// <param name="moved">How far each place is from its mean.</param>
    /// <param name="surprises">Takes the surprise at each place, scaled; zero elsewhere.</param>
    public void Take(Round round, Heard heard, ReadOnlySpan<double> moved, Span<double> surprises)
    {
        surprises.Clear();
        for (var i = 0; i < heard.Rows.Length; i++)
        {
            var p = heard.Rows[i];
            surprises[p] = _standing.Take(p, Beyond(heard.Takes[i], moved[p]), round.Hours) / _scale[p];
        }

        Span<double> errors = stackalloc double[round.Values.Count];
        _errors.Learn(heard, surprises, errors);
        foreach (var p in heard.Readings)
        {
            surprises[p] = _standing.Take(p, moved[p], round.Hours, errors[p - round.Rows.Count]) / _scale[p];
        }
    }
}

/// <summary>The places of an entry that have something to say, and what its rows tell of errors.</summary>
/// <param name="Rows">The rows among them.</param>
/// <param name="Readings">The readings among them.</param>
/// <param name="Takes">For each of the rows, what it takes again.</param>
/// <param name="Lessons">For each reading that they take.</param>
/// <param name="Numbers">The oldest number that is in use, and the next that will be.</param>
internal sealed record Heard(int[] Rows, int[] Readings, Again[][] Takes, Lesson[] Lessons, (int First, int Next) Numbers)
{
    /// <summary>Rows and readings.</summary>
    public int[] All { get; } = [.. Rows, .. Readings];
}
