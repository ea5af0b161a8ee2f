namespace Logbook.Checks.CrossExamination;

/// <summary>How one hypothesis that began at one entry matches all entries since; each new entry is added to it.</summary>
internal sealed class Trace
{
    /// <summary>An entry that could hardly see the error has no say on whether it stayed the same.</summary>
    private const double Weak = 0.2;

    private readonly Fitted _fitted;
    private readonly Filter _filter;
    private readonly List<Tried> _physics;

    public Trace(Fitted fitted, Hypothesis hypothesis, double began)
    {
        (_fitted, Hypothesis, Began) = (fitted, hypothesis, began);
        (_filter, _physics) = (new Filter(fitted.Forecasts, fitted.Scale), []);
    }

    private Trace(Trace other)
    {
        (_fitted, Hypothesis, Began) = (other._fitted, other.Hypothesis, other.Began);
        (_filter, _physics) = (other._filter.Copy(), [.. other._physics]);
        (Entries, Physics, Quiet, Changed, IsNews) = (other.Entries, other.Physics, other.Quiet, other.Changed, other.IsNews);
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

    /// <summary>On rows and readings, the plant as usual.</summary>
    public Tried Quiet { get; private set; }

    /// <summary>The same, the plant being moved.</summary>
    public Tried Changed { get; private set; }

    /// <summary>The physics statistic, less what the entries disagree about its size.</summary>
    public double Evidence => Physics.Statistic - Disagreement();

    public Trace Copy() => new(this);

    public void Add(Glance glance)
    {
        var effects = glance.Effects(Hypothesis, Began);
        var moved = _filter.Take(glance.Round, glance.Heard, effects);
        Entries++;
        Quiet += Try(glance.Quiet, moved);
        Changed += Try(glance.Changed, moved);
        IsNews = glance.Heard.Rows.Any(k => effects[k] != 0);
        if (IsNews)
        {
            _physics.Add(Try(glance.Physics, moved));
            Physics += _physics[^1];
        }
    }

    /// <summary>An error that stays is the same in every entry; one wild value is not, and is left to the entry that had it.</summary>
    private double Disagreement() =>
        _physics.Where(t => t.Strength > Weak * Physics.Strength / Onset).Sum(t => Math.Pow(t.Match - (Physics.Size * t.Strength), 2) / t.Strength);

    private static Tried Try(View? view, double[] moved) => view?.Try(moved) ?? default;
}
