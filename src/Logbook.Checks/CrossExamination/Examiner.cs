namespace Logbook.Checks.CrossExamination;

/// <summary>
/// Examines one entry after the other. Physics convicts: nothing is called wrong unless the rows alone exceed their threshold.
/// History identifies: then the shares of the hypotheses decide, from rows and readings of the last three entries.
/// </summary>
internal sealed class Examiner
{
    /// <summary>Evidence of an error counts over so many entries in which a row speaks of it.</summary>
    public const int Onsets = 3;

    /// <summary>No evidence is older than so many entries.</summary>
    private const int Window = 13;

    private readonly Fitted _fitted;
    private readonly Views _views;
    private readonly Standing _standing;
    private readonly Steadiness _steadiness;
    private readonly List<Glance> _glances = [];
    private readonly List<Trace> _begun = [];

    public Examiner(Fitted fitted)
    {
        _fitted = fitted;
        _views = new Views(new Factors(fitted.Quiet), new Factors(fitted.Changed));
        _standing = new Standing(fitted.Forecasts);
        _steadiness = new Steadiness(fitted.Line, fitted.UsualChanges);
    }

    private Examiner(Examiner other)
    {
        (_fitted, _views, _standing, _steadiness) = (other._fitted, other._views, other._standing.Copy(), other._steadiness.Copy());
        (_glances, _begun) = ([.. other._glances], other._begun.ConvertAll(t => t.Copy()));
    }

    /// <summary>One that goes on from here by itself: what would be said of another next entry.</summary>
    public Examiner Branch() => new(this);

    /// <summary>Takes an entry up without judging it.</summary>
    public Glance Pass(Round round)
    {
        var glance = Glance.Of(_fitted, _views, _steadiness.Heard(round), _standing);
        _glances.Add(glance);
        Begin(glance);
        if (_glances.Count > Window)
        {
            _glances.RemoveAt(0);
        }

        return glance;
    }

    /// <summary>Takes an entry up and judges it.</summary>
    public Examination Next(Round round)
    {
        var glance = Pass(round);
        var traces = Compared();
        var gate = Gate.Of(traces, _fitted.Thresholds);
        return new Examination(gate, gate.Open ? Shares.Of(_glances, traces, _fitted.Counts) : Suspicion.None, glance);
    }

    /// <summary>What this entry compared of each suspicion, for learning the thresholds.</summary>
    public IEnumerable<Trace> Compare(Round round)
    {
        Pass(round);
        return Compared().Where(t => t.IsNews);
    }

    /// <summary>The gate alone.</summary>
    public Gate Measure(Round round)
    {
        Pass(round);
        return Gate.Of(Compared(), _fitted.Thresholds);
    }

    private List<Trace> Compared() => _begun.FindAll(t => t.Onset > 0);

    /// <summary>
    /// Every entry that has what would be wrong is a possible beginning, back to the third entry in which a row compared it:
    /// between two comparisons nothing tells when it began but the readings themselves.
    /// </summary>
    private void Begin(Glance glance)
    {
        _begun.AddRange(_fitted.Hypotheses.Where(glance.Has).Select(h => new Trace(_fitted, h, glance.Round.Hours)));
        _begun.ForEach(t => t.Add(glance));
        _begun.RemoveAll(t => t.Onset > Onsets || t.Entries > Window);
    }
}

/// <summary>What an examination found.</summary>
/// <param name="Gate">Whether anything is wrong at all, by physics alone.</param>
/// <param name="Suspicion">What it may be; nobody when the gate stayed shut.</param>
/// <param name="Glance">The entry as it was heard: its surprises, and the rows that spoke.</param>
internal sealed record Examination(Gate Gate, Suspicion Suspicion, Glance Glance)
{
    /// <summary>The most likely first.</summary>
    public IReadOnlyList<Suspect> Suspects => Suspicion.Suspects;

    public Verdict Verdict { get; } = Verdict.Of(Suspicion.Suspects, Suspicion.Nothing);
}
