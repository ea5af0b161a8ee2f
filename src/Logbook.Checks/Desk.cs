using Logbook.Checks.Examining;
using Logbook.Contracts;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>A place to write from: the store, the state that follows it, the calculations and the clock. One per terminal.</summary>
/// <param name="store">The line's journal.</param>
/// <param name="files">The site's files as they lie in the folder: an empty journal adopts them at its first write.</param>
/// <param name="calculations">What the plug-ins offer.</param>
/// <param name="guard">Runs an entry's calculations.</param>
/// <param name="clock">Where 'now' comes from.</param>
/// <param name="terminal">host:tty.</param>
/// <param name="known">A state of this journal that the caller has already; what came later is read from there.</param>
public sealed class Desk(
    IJournalStore store, SiteFiles files, IReadOnlyList<LoadedCalculation> calculations, IGuard guard, TimeProvider clock, string terminal, State? known = null)
{
    // A clock that is set right by its time server moves by seconds; more than this is a jump that a person must know of.
    private static readonly TimeSpan ClockGrace = TimeSpan.FromMinutes(1);

    private readonly Recent _recent = new(store);
    private Parsed<Site>? _folder;
    private CalculationGraph? _graph;

    public IJournalStore Store => store;

    public SiteFiles Files => files;

    public IReadOnlyList<LoadedCalculation> Calculations => calculations;

    public IGuard Guard => guard;

    public TimeProvider Clock => clock;

    public string Terminal => terminal;

    /// <summary>Says how far a server that the journal is forwarded to has come; null when it is forwarded nowhere.</summary>
    public Func<Head, ServerView>? Server { get; set; }

    /// <summary>The state at the last <see cref="Follow"/> or <see cref="Write"/>.</summary>
    public State State { get; private set; } = known ?? State.Empty;

    /// <summary>The folder's files as a site, or every mistake in them.</summary>
    public Parsed<Site> Folder => _folder ??= SiteReader.Read(files);

    /// <summary>Why nothing can be written here: the mistakes of the folder's files while none are in force. Empty when all is well.</summary>
    public IReadOnlyList<Mistake> NotReady => State.Site is null ? Folder.Mistakes : [];

    /// <summary>The site in force: the adopted one, else the folder's.</summary>
    /// <exception cref="InvalidOperationException">Nothing is in force and the folder's files have mistakes: see <see cref="NotReady"/>.</exception>
    public Site Site => State.Site ?? Folder.Value
        ?? throw new InvalidOperationException($"no site is in force and the folder's files have {Folder.Mistakes.Count} mistakes");

    /// <summary>Now to the millisecond, as records keep it, with the site's offset.</summary>
    public DateTimeOffset Now => Given.Instant(Site, clock.GetUtcNow());

    /// <summary>The site's calculations linked to the plug-ins'.</summary>
    internal CalculationGraph Graph => _graph is { } graph && ReferenceEquals(graph.Site, Site)
        ? graph
        : _graph = CalculationGraph.Link(Site, calculations);

    /// <summary>Why this person cannot write here; empty when nothing is against it.</summary>
    public IEnumerable<Mistake> WhyNot(string by) => Given.Writer(Site, State, by);

    /// <summary>The cross-examination of entries, as far as it is known here.</summary>
    internal Examinations Examinations { get; } = new(store);

    /// <summary>The values of the last day and a half, up to <see cref="State"/>.</summary>
    internal Recent Recent => _recent.UpTo(State.Head.Seq, Now);

    /// <summary>Moves the state forward by what any terminal has written since.</summary>
    public void Follow()
    {
        if (store.Head.Seq == State.Head.Seq)
        {
            return;
        }

        State = Replay.Forward(store, State);
    }

    /// <summary>
    /// Appends one record (after adopting the files, when the journal is empty, and after noting that the clock has jumped
    /// back, when it has) and moves the state forward.
    /// </summary>
    /// <exception cref="JournalException">Nothing was saved.</exception>
    public JournalRecord Write(RecordBody body, DateTimeOffset at, string by)
    {
        Follow();
        if (State.Head.Seq == 0 && body is not SiteAdopted)
        {
            Append(new SiteAdopted(files.Texts, "first record of the journal"), Now, by);
        }

        if (State.LastEntered is { } last && Now < last - ClockGrace)
        {
            Append(new ClockJumped(last, Now, null, null), Now, by);
        }

        return Append(body, at, by);
    }

    private JournalRecord Append(RecordBody body, DateTimeOffset at, string by)
    {
        var site = Site;
        var shift = Calendar.ShiftAt(site, at).Id;
        var record = store.Append(new RecordDraft(body, site.Id, Given.Instant(site, at), Now, shift, by, terminal));
        if (record.Seq == State.Head.Seq + 1)
        {
            State = State.Apply(record).KeptNowAndThen(store);
            _recent.Appended(record);
        }
        else
        {
            Follow(); // another terminal wrote in between: its records come first
        }

        return record;
    }
}

/// <summary>How far the server has come, in one line.</summary>
/// <param name="Watch">True when somebody should look after it.</param>
public sealed record ServerView(string Text, bool Watch);

/// <summary>A calculation and where it comes from.</summary>
/// <param name="PlugIn">Name and version of the plug-in: <c>Slaking 0.1.0</c>.</param>
public sealed record LoadedCalculation(ICalculation Calculation, string PlugIn);
