using Logbook.Checks.CrossExamination;
using Logbook.Contracts;
using Logbook.Journal;

namespace Logbook.Checks.Examining;

/// <summary>The examination at one point of the journal: what it knows of the entries before.</summary>
internal sealed class Trail
{
    private const int Together = 16;

    /// <summary>As far back as the engine looks for evidence.</summary>
    private const int Kept = Strand.Window;

    private readonly Fitted _fitted;
    private readonly Tape _tape;
    private readonly Examiner _examiner;
    private readonly List<Examined> _last = [];

    public Trail(Fitted fitted, Tape tape)
        : this(fitted, tape, new Examiner(fitted), [])
    {
    }

    private Trail(Fitted fitted, Tape tape, Examiner examiner, IEnumerable<Examined> last)
    {
        (_fitted, _tape, _examiner) = (fitted, tape, examiner);
        _last.AddRange(last);
    }

    public Fitted Fitted => _fitted;

    public SiteLine Line => _tape.Line;

    public CalculationGraph Graph => _tape.Graph;

    /// <summary>The last entries that took part, oldest first.</summary>
    public IReadOnlyList<Examined> Last => _last;

    public Trail Branch() => Branch(_tape.Guard);

    /// <summary>This trail after more entries. A few at a time share one guarded pass, which is quicker and may be run again.</summary>
    /// <param name="slopes">True for what may still be evidence when an entry is judged.</param>
    public Trail After(IEnumerable<Sheet> sheets, Standstill standstill, Func<Sheet, bool> slopes)
    {
        var trail = this;
        foreach (var some in sheets.Chunk(Together))
        {
            var from = trail;
            trail = _tape.Guard.Run(call =>
            {
                var next = from.Branch(new Within(call));
                foreach (var sheet in some)
                {
                    next.Next(sheet, standstill, slopes(sheet));
                }

                return next;
            });
        }

        return trail.Branch(_tape.Guard);
    }

    private Trail Branch(IGuard guard) => new(_fitted, _tape.Copy(guard), _examiner.Branch(), _last);

    /// <summary>Takes an entry up and judges it; null when it takes no part.</summary>
    /// <param name="slopes">False for what cannot be evidence any more when a later entry is judged.</param>
    public Examined? Next(Sheet sheet, Standstill standstill, bool slopes = true)
    {
        if (_tape.Read(sheet, standstill, slopes) is not { } frame)
        {
            return null;
        }

        var examined = new Examined(frame, _examiner.Next(frame.Round));
        Keep(examined);
        return examined;
    }

    /// <summary>What was said of the entry that was judged last.</summary>
    public void Said(IEnumerable<Finding> findings)
    {
        var frame = _last[^1].Frame;
        _last[^1] = _last[^1] with { Frame = frame with { Sheet = frame.Sheet with { Findings = [.. findings] } } };
    }

    private void Keep(Examined examined)
    {
        _last.Add(examined);
        if (_last.Count > Kept)
        {
            _last.RemoveAt(0);
        }
    }
}

/// <summary>Inside a guarded pass there is no need of another.</summary>
internal sealed class Within(GuardedCall call) : IGuard
{
    public T Run<T>(Func<GuardedCall, T> pass) => pass(call);
}

/// <summary>An entry that took part.</summary>
/// <param name="Result">What was found when it was taken up.</param>
internal sealed record Examined(Frame Frame, Examination Result)
{
    /// <summary>How far it was from what was expected, and which rows were heard.</summary>
    public Glance Glance => Result.Glance;

    /// <summary>True when a row was heard in which the parameter speaks with a value that was read then or later.</summary>
    public bool Compared(int place, DateTimeOffset since) => Frame.Round.Rows.Index().Any(r => r.Item is { } row && double.IsFinite(Glance.Surprises[r.Index])
        && row.Sensitivities.Any(s => s.Parameter == place && s.Slope != 0 && Frame.Sheet.Hours - s.HoursBack > Sheet.HoursOf(since) - Moment));

    /// <summary>Hours are told apart to a few seconds.</summary>
    private const double Moment = 0.001;
}
