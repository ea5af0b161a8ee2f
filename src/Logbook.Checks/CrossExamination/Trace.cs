namespace Logbook.Checks.CrossExamination;

/// <summary>How one hypothesis that began at one entry matches all entries since; each new entry is added to it.</summary>
internal sealed class Trace
{
    /// <summary>An entry that could hardly see the error has no say on whether it stayed the same.</summary>
    private const double Weak = 0.2;

    /// <summary>What rows say is something from two standard deviations on.</summary>
    private const double Spoken = 4;

    private readonly Fitted _fitted;
    private readonly Filter _filter;
    private readonly Standing _real;
    private readonly List<Tried> _physics;

    // How likely the entries are with nothing wrong: in each view, and each entry in its likelier one.
    private double _quiet;
    private double _changed;
    private double _sound;

    public Trace(Fitted fitted, Hypothesis hypothesis, double began)
    {
        (_fitted, Hypothesis, Began) = (fitted, hypothesis, began);
        (_filter, _real, _physics) = (new Filter(fitted.Forecasts, fitted.Scale), new Standing(fitted.Forecasts), []);
    }

    private Trace(Trace other)
    {
        (_fitted, Hypothesis, Began) = (other._fitted, other.Hypothesis, other.Began);
        (_filter, _real, _physics) = (other._filter.Copy(), other._real.Copy(), [.. other._physics]);
        (_quiet, _changed, _sound) = (other._quiet, other._changed, other._sound);
        (Entries, Physics, Wrong, Real, IsNews) = (other.Entries, other.Physics, other.Wrong, other.Real, other.IsNews);
    }

    public Hypothesis Hypothesis { get; }

    /// <summary>The hour from which on it would be wrong.</summary>
    public double Began { get; }

    /// <summary>In how many entries a row has compared it with something since it began; zero when none has.</summary>
    public int Onset => _physics.Count;

    /// <summary>True when a row of the newest entry compared it with something.</summary>
    public bool IsNews { get; private set; }

    /// <summary>All entries since then.</summary>
    public int Entries { get; private set; }

    /// <summary>On the rows alone.</summary>
    public Tried Physics { get; private set; }

    /// <summary>On rows and readings: its readings are wrong.</summary>
    public Told Wrong { get; private set; }

    /// <summary>On rows and readings: the plant really went where its readings show it, and the rows hold.</summary>
    public Told Real { get; private set; }

    /// <summary>
    /// Twice the logarithm of how much better the entries are explained by the error than by nothing, or by a plant that really
    /// went where the readings show it; less what the entries disagree about its size. What only the readings' past speaks of is
    /// no evidence, for that the plant explains as well. But the readings' past tells how far the noise of each goes now, and so
    /// how much of what a row misses is no noise.
    /// </summary>
    public double Evidence => (2 * (Best(Wrong) - Math.Max(_sound, Best(Real)))) - Disagreement();

    /// <summary>True when the rows alone speak of it too.</summary>
    public bool RowsSpeak => Physics.Statistic >= Spoken;

    public Trace Copy() => new(this);

    public void Add(Glance glance)
    {
        // Every suspicion of every entry comes through here: room on the stack, nothing for the collector.
        Span<double> effects = stackalloc double[_fitted.Line.Width];
        Span<double> moved = stackalloc double[_fitted.Line.Width];
        Span<double> really = stackalloc double[_fitted.Line.Width];
        glance.Effects(Hypothesis, Began, double.PositiveInfinity, effects);
        _filter.Take(glance.Round, glance.Heard, effects, moved);
        Really(glance, effects, really);
        Entries++;
        (_quiet, _changed, _sound) = (_quiet + glance.Usual, _changed + glance.Moved, _sound + glance.Sound);
        Wrong += Told.Of(glance, moved);
        Real += Told.Of(glance, really);
        IsNews = effects[.._fitted.Line.Rows.Count].ContainsAnyExcept(0);
        if (IsNews)
        {
            _physics.Add(glance.Physics?.Try(moved) ?? default);
            Physics += _physics[^1];
        }
    }

    /// <summary>An error that stays is the same in every entry; one wild value is not, and is left to the entry that had it.</summary>
    private double Disagreement() =>
        _physics.Where(t => t.Strength > Weak * Physics.Strength / Onset).Sum(t => Math.Pow(t.Match - (Physics.Size * t.Strength), 2) / t.Strength);

    /// <summary>How likely the entries since it began are with an error whose size is unknown within a reach.</summary>
    public double Weight(Told told, double reach) => Likely.Either(_quiet + Gain(told.Quiet, reach), _changed + Gain(told.Changed, reach));

    /// <summary>The same at the size that explains most.</summary>
    private double Best(Told told) => Likely.Either(_quiet + (told.Quiet.Statistic / 2), _changed + (told.Changed.Statistic / 2));

    private static double Gain(Tried tried, double reach) =>
        (tried.Match * tried.Match / (2 * (tried.Strength + (1 / (reach * reach))))) - (Math.Log(1 + (reach * reach * tried.Strength)) / 2);

    /// <summary>How far the readings would surprise if the plant really did what they show: the rows stay as they are.</summary>
    private void Really(Glance glance, ReadOnlySpan<double> effects, Span<double> really)
    {
        foreach (var p in glance.Heard.Readings)
        {
            really[p] = _real.Take(p, effects[p], glance.Round.Hours) / _fitted.Scale[p];
        }
    }
}
