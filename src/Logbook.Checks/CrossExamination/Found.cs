namespace Logbook.Checks.CrossExamination;

/// <summary>
/// An error that was named. It is taken out of the entries since, so that it neither hides another one nor speaks against what
/// is sound: a figure that was put right, a row that looks back.
/// </summary>
internal sealed class Found
{
    private readonly Fitted _fitted;
    private readonly Suspect _suspect;
    private Filter _filter;
    private int _entries;

    public Found(Fitted fitted, Suspect suspect) => (_fitted, _suspect, _filter) = (fitted, suspect, new Filter(fitted.Forecasts, fitted.Scale));

    private Found(Found other) =>
        (_fitted, _suspect, _filter, _entries, Until) = (other._fitted, other._suspect, other._filter.Copy(), other._entries, other.Until);

    public int Parameter => _suspect.Parameter;

    /// <summary>The hour from which on the reading is right again.</summary>
    public double Until { get; private set; } = double.PositiveInfinity;

    public bool Stays => double.IsPositiveInfinity(Until);

    /// <summary>Nothing of it is left in the entries that are looked at.</summary>
    public bool Passed => _entries > Strand.Window;

    public Found Copy() => new(this);

    /// <summary>The same before any entry was seen.</summary>
    public Found Anew() => new(_fitted, _suspect);

    /// <summary>The entry without it. An error that the entry denies is over; which is likelier is decided as for any other.</summary>
    public Glance Without(Glance glance)
    {
        if (glance.Round.Hours < _suspect.Since)
        {
            return glance;
        }

        _entries++;
        if (Stays && glance.Round.Hours > _suspect.Since && glance.Has(_suspect.Hypothesis))
        {
            var (stays, over) = (Less(glance, _filter.Copy(), Until), Less(glance, _filter.Copy(), glance.Round.Hours));
            Until = over.Sound > stays.Sound ? glance.Round.Hours : Until;
        }

        return Less(glance, _filter, Until);
    }

    private Glance Less(Glance glance, Filter filter, double until)
    {
        Span<double> effects = stackalloc double[_fitted.Line.Width];
        Span<double> moved = stackalloc double[_fitted.Line.Width];
        glance.Effects(_suspect.Hypothesis, _suspect.Since, until, effects);
        filter.Take(glance.Round, glance.Heard, effects, moved);
        return glance.Less(moved, _suspect.Bias);
    }
}
