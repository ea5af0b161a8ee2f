using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Runs effects against the journal and the draft's file, and answers with messages.</summary>
internal sealed class Runner(Desk desk, DraftFolder drafts, Pins pins)
{
    private const int Looked = 10;
    private static readonly TimeSpan LookBackOver = TimeSpan.FromHours(30);

    private readonly HandoverRunner _handover = new(desk, pins);
    private DateTimeOffset _minute;
    private Head _told = Head.Empty;
    private ServerView? _server;
    private Runner? _beside;

    /// <summary>
    /// A slow effect, to be run on another thread: on a desk of its own, which only such effects have, one after the other. What
    /// they share with the keys (the store, the guard) may be used side by side.
    /// </summary>
    public Func<IReadOnlyList<Message>> Beside(Effect effect)
    {
        var beside = _beside ??= new Runner(new Desk(desk.Store, desk.Files, desk.Calculations, desk.Guard, desk.Clock, desk.Terminal, desk.State), drafts, pins);
        return () => [.. beside.Run(effect)];
    }

    public IEnumerable<Message> Run(Effect effect)
    {
        try
        {
            return effect switch
            {
                GoOn on => [on.Message],
                Follow => Changed(),
                SaveEntry save => Save(save.Request),
                KeepDraft keep => Keep(keep.Line),
                DropDraft => Drop(),
                TakeUpDraft take => TakeUp(take.File),
                OpenRound open => [RoundAtHand.Find(desk, open)],
                LookBack back => [new LookedBack(back.Point, Newest(back.Point))],
                ReadOlder older => [Older(older)],
                ReadNewer newer => [new LogRead([.. LogLine.Of(desk, desk.Store.Read(newer.After + 1)).Reverse()], newer.After + 1)],
                ReadSeries read => [new SeriesRead([.. read.Points.Select(desk.Site.FindPoint).OfType<Point>().Select(p => GraphSeries.Of(desk, p, read.From, read.To))])],
                WriteIt write => [Write(write.What), new FactsChanged(Facts())],
                ReadRelated related => [new RelatedRead(related.Seq, [.. RecordLinks.About(Fresh(), related.Seq).Select(r => LogLine.Of(desk, r))])],
                ReadAudit read => [new AuditRead(read, Audit.Between(Fresh(), read.From, read.To))],
                ReadOver => [new OverRead(OverInShift.Of(Fresh()))],
                ReadOn on => [_handover.Next(on.By)],
                ShowPage show => _handover.Show(show.By, show.Page),
                MissQuestion missed => [.. _handover.Miss(missed), new FactsChanged(Facts())],
                SeePage see => [.. _handover.See(see), new FactsChanged(Facts())],
                Hand hand => [.. _handover.Do(hand), new FactsChanged(Facts())],
                ReadRecord one => [.. desk.Store.Read(one.Seq).Take(1).Select(r => new RecordRead(r, LogLine.Of(desk, r).Words, SignedInWords.Of(desk, r), [.. desk.Store.Corrections(r.Seq, r.Seq)]))],
                _ => throw new InvalidOperationException($"no such effect: {effect}"),
            };
        }
        catch (JournalException trouble)
        {
            return [effect is SaveEntry ? new EntryNotSaved(trouble.Message) : new Troubled(trouble.Message)];
        }
    }

    private Desk Fresh()
    {
        desk.Follow();
        return desk;
    }

    private Wrote Write(ToWrite what)
    {
        var written = what.Write(desk);
        string?[] warnings = written.Record is null ? [] : [what.Beside(desk.Site), what.On(desk) is { } on ? YetRecorded.Warning(desk, on) : null];
        return new Wrote(what, written) { Warning = string.Join(". ", warnings.OfType<string>()) is { Length: > 0 } warning ? warning : null };
    }

    /// <summary>What is known now.</summary>
    public Facts Facts()
    {
        desk.Follow();
        _minute = Minute();
        _told = desk.State.Head;
        var now = NowView.Of(desk);
        _server = now.Server;
        return new Facts(desk.Site, now with { InCharge = InKeys.Of(now.InCharge) }, desk.State.Head, desk.State.Line) { Departments = desk.State.Departments, Equipment = desk.State.Equipment, OwnOff = OwnLooks.WhyNot(desk) };
    }

    /// <summary>Drafts that were left behind, without what the journal has: a session may have ended between its save and the end of its draft.</summary>
    public IReadOnlyList<LeftDraft> Left()
    {
        var left = new List<LeftDraft>();
        foreach (var file in drafts.Left)
        {
            if (Unsaved(file) is { } unsaved)
            {
                left.Add(unsaved);
            }
            else
            {
                drafts.Forget(file.File);
            }
        }

        return left;
    }

    private LeftDraft? Unsaved(LeftDraft left)
    {
        Draft? draft = left.Draft;
        foreach (var record in desk.Store.Between(left.Draft.From, desk.Now.AddMinutes(1)))
        {
            draft = draft?.Without(record);
        }

        return draft is null ? null : left with { Draft = draft };
    }

    private IEnumerable<Message> Changed()
    {
        desk.Follow();
        return desk.State.Head == _told && Minute() == _minute && desk.Server?.Invoke(_told) == _server ? [] : [new FactsChanged(Facts())];
    }

    private DateTimeOffset Minute()
    {
        var now = desk.Now;
        return now.AddTicks(-(now.Ticks % TimeSpan.TicksPerMinute));
    }

    private Message[] Save(EntryRequest request)
    {
        var written = RecordEntry.Run(desk, request);
        return written.Record is { } record
            ? [new EntrySaved(record), new FactsChanged(Facts())]
            : [new EntryNotSaved(InKeys.Of(string.Join("; ", written.Mistakes)))];
    }

    private Message[] Keep(DraftLine line) =>
        OnDisk.Refusal(() => drafts.Keep(line)) is { } refused ? [new DraftNotKept(refused.Message)] : [new DraftKept()];

    private Message[] Drop() =>
        OnDisk.Refusal(drafts.Drop) is { } refused ? [new DraftNotKept(refused.Message)] : [];

    private Message[] TakeUp(string file)
    {
        drafts.TakeUp(file);
        return [];
    }

    private IReadOnlyList<SeriesValue> Newest(string point) =>
        [.. desk.Store.Series(point, desk.Now - LookBackOver, desk.Now).Where(v => v.Value is not null).TakeLast(Looked)];

    private LogRead Older(ReadOlder older)
    {
        var from = Math.Max(1, older.Below - older.Count);
        var records = LogLine.Of(desk, desk.Store.Read(from).TakeWhile(r => r.Seq < older.Below)).Reverse();
        return new LogRead([.. records], from);
    }
}
