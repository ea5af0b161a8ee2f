namespace Logbook.Checks.CrossExamination;

/// <summary>What is expected of the next entry: by each place's own past, and by the errors that the entries before showed.</summary>
internal sealed class Expected
{
    /// <summary>No row looks back so many hours to what another one took.</summary>
    private const double Remembered = 12;

    private readonly Fitted _fitted;
    private readonly Factors _factors;
    private readonly Filter _filter;
    private readonly Lessons _lessons;

    public Expected(Fitted fitted, Factors factors)
        : this(fitted, factors, new Filter(fitted.Forecasts, fitted.Scale), new Lessons(fitted))
    {
    }

    private Expected(Fitted fitted, Factors factors, Filter filter, Lessons lessons) =>
        (_fitted, _factors, _filter, _lessons) = (fitted, factors, filter, lessons);

    public Expected Copy() => new(_fitted, _factors, _filter.Copy(), _lessons.Copy());

    /// <summary>What an entry has at a place beyond the errors that are expected in it; NaN when nothing.</summary>
    public double Beyond(Round round, int place) =>
        _filter.Beyond(place < round.Rows.Count && round.Rows[place] is { } row ? _lessons.Again(row, round.Hours) : [], Places.Value(_fitted.Line, round, place));

    /// <summary>How far each place of an entry is from what was expected, scaled; the entry is then expected by what comes after.</summary>
    public (Heard Heard, double[] Surprises) Take(Round round)
    {
        _lessons.Forget(round.Hours - Remembered);
        var heard = _lessons.Of(round, _factors);
        var moved = new double[_fitted.Line.Width];
        foreach (var p in heard.All)
        {
            moved[p] = Places.Value(_fitted.Line, round, p) - _fitted.Forecasts[p].Mean;
        }

        var surprises = new double[moved.Length];
        _filter.Take(round, heard, moved, surprises);
        return (heard, surprises);
    }
}
