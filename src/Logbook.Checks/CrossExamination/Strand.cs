namespace Logbook.Checks.CrossExamination;

/// <summary>The last entries and what each suspicion has matched in them.</summary>
internal sealed class Strand
{
    /// <summary>No evidence is older than so many entries.</summary>
    public const int Window = 13;

    private readonly Fitted _fitted;
    private readonly List<Glance> _glances;
    private readonly List<Trace> _begun;

    public Strand(Fitted fitted) => (_fitted, _glances, _begun) = (fitted, [], []);

    public Strand(Fitted fitted, IEnumerable<Glance> glances)
        : this(fitted)
    {
        foreach (var glance in glances)
        {
            Add(glance);
        }
    }

    private Strand(Strand other) => (_fitted, _glances, _begun) = (other._fitted, [.. other._glances], other._begun.ConvertAll(t => t.Copy()));

    public IReadOnlyList<Glance> Glances => _glances;

    public Strand Copy() => new(this);

    /// <summary>The same entries, but what begins from now on alone is suspected.</summary>
    public Strand FromHereOn()
    {
        var strand = new Strand(_fitted);
        strand._glances.AddRange(_glances);
        return strand;
    }

    /// <summary>
    /// Every entry that has what would be wrong is a possible beginning, back to the third entry in which a row compared it:
    /// between two comparisons nothing tells when it began but the readings themselves.
    /// </summary>
    public void Add(Glance glance)
    {
        _glances.Add(glance);
        _begun.AddRange(_fitted.Hypotheses.Where(glance.Has).Select(h => new Trace(_fitted, h, glance.Round.Hours)));
        _begun.ForEach(t => t.Add(glance));
        _begun.RemoveAll(t => t.Onset > Examiner.Onsets || t.Entries > Window);
        if (_glances.Count > Window)
        {
            _glances.RemoveAt(0);
        }
    }

    /// <summary>What has been compared of each suspicion.</summary>
    public List<Trace> Compared() => _begun.FindAll(t => t.Onset > 0);

    /// <summary>Whether anything is wrong with the newest entry, and what.</summary>
    public Examination Judge()
    {
        var traces = Compared();
        var gate = Gate.Of(traces, _fitted.Thresholds);
        var suspicion = gate.Open ? Shares.Of(_glances, traces, _fitted.Counts) : Suspicion.None;
        return new Examination(gate, suspicion, Verdict.Of(suspicion.Suspects, suspicion.Nothing), [.. _glances]);
    }
}
