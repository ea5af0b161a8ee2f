using CsCheck;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>Whoever does what in whatever order: exactly one person holds the line, or nobody does.</summary>
public class HoldingProperties
{
    private static readonly string[] People = ["op1", "op2", "op3", "sup1"];

    private static readonly Gen<(int What, int Who, int Minutes)[]> Events = Gen.Select(Gen.Int[0, 11], Gen.Int[0, 3], Gen.Int[0, 50]).Array[1, 25];

    [Fact]
    public void The_line_moves_by_an_acceptance_or_a_relief_alone_and_to_the_one_who_signed() => Events.Sample(events =>
    {
        using var flow = new FlowLine("2026-11-24T20:00-05:00");
        var at = SmallLine.At("2026-11-24T20:00-05:00");
        var before = flow.Holder;
        foreach (var (what, who, minutes) in events)
        {
            at = at.AddMinutes(minutes);
            flow.Line.Clock(at);
            var record = Do(flow, what, People[who]);

            var moved = record?.Body is HandoverAccepted or HandoverRelief { Mode: not "left" } ? record.By
                : record?.Body is HandoverRelief ? null
                : before;
            Assert.Equal(moved, flow.Holder);
            Assert.True(flow.Holder is null || flow.Desk.WhyNot(flow.Holder).ToList().Count == 0);
            Assert.True(flow.Held.Prepared is null || flow.Held.Prepared.By == flow.Holder);
            before = flow.Holder;
        }

        var replayed = flow.Desk.Store.Read().Aggregate(State.Empty, (state, record) => state.Apply(record));
        Assert.Equal(flow.Holder, replayed.Line.Holder?.Code);

        // A state that is kept beside the journal says the same when it is read again.
        var kept = StateForm.Read(StateForm.Write(replayed))!;
        Assert.Equal(StateForm.Write(flow.Desk.State), StateForm.Write(kept));
        Assert.Equal((replayed.Line.Holder, replayed.Line.NotYet, replayed.Line.Called), (kept.Line.Holder, kept.Line.NotYet, kept.Line.Called));
        Assert.Equal(replayed.Line.Seen, kept.Line.Seen);
    }, iter: 60);

    [Fact]
    public void Records_in_any_order_from_anybody_never_give_the_line_to_two_or_to_one_who_did_not_sign()
    {
        using var flow = new FlowLine("2026-11-24T20:00-05:00").HeldBy("op1").HandedTo("op2");
        Relieving.Emergency(flow.Desk, "op3", "1");
        Relieving.Short(flow.Desk, flow.Sign(), "op1", "bowl");
        Relieving.Leave(flow.Desk, "op1", "1");
        var bodies = flow.Desk.Store.Read().Where(r => r.Body is HandoverAccepted or HandoverPrepared or HandoverRelief).Append(flow.Desk.Store.Read().First()).ToList();

        Gen.Select(Gen.Int[0, bodies.Count - 1], Gen.Int[0, 3]).Array[1, 30].Sample(order =>
        {
            var state = State.Empty;
            var signed = new HashSet<string>(StringComparer.Ordinal);
            foreach (var (which, who) in order)
            {
                var record = bodies[which] with { By = People[who], Seq = state.Head.Seq + 1 };
                state = state.Apply(record);
                signed.Add(record.By);
            }

            Assert.True(state.Line.Holder is null || signed.Contains(state.Line.Holder.Code));
            Assert.True(state.Line.Holder is null || state.Line.NobodySince is null);
        });
    }

    [Fact]
    public void The_note_never_says_that_silence_is_safe() => Events.Sample(events =>
    {
        using var flow = new FlowLine("2026-11-24T20:00-05:00");
        foreach (var (what, who, _) in events)
        {
            Do(flow, what, People[who]);
        }

        var note = HandoverNote.InHand(flow.Desk);
        var text = string.Join('\n', note.Sections.SelectMany(s => s.Lines.Select(l => $"{l.Label} {l.Text}").Prepend($"{s.Title} {s.Beside}")).Concat(note.Signatures));
        Assert.DoesNotMatch("(?i)nobody inside|all normal|isolated|\\bsafe to\\b|no hazards|all ok", text);
    }, iter: 30);

    /// <summary>Tries one thing; the record when no rule stood against it.</summary>
    private static JournalRecord? Do(FlowLine flow, int what, string who) => what switch
    {
        0 => flow.Prepare(who, "bowl may climb").Record,
        1 => Opened(flow, who, LineHeld.Pages.ToArray()),
        2 => Opened(flow, who, ["hazards"]),
        3 or 4 => flow.Accept(who, "pump first").Record,
        5 => flow.Accept(new AcceptRequest(who, ["pump first"], flow.RightAnswers(who)) { Unattended = "nobody came" }).Record,
        6 => Relieving.Short(flow.Desk, flow.Sign(), who, "bowl").Record,
        7 => Relieving.Emergency(flow.Desk, who, "2").Record,
        8 => Relieving.Leave(flow.Desk, who, "2").Record,
        9 => Staying.NotYet(flow.Desk, who, "1").Record ?? Staying.Refuse(flow.Desk, who, "not as written").Record,
        10 => Staying.Continue(flow.Desk, who, "relief is ill").Record,
        _ => Hazard(flow),
    };

    private static JournalRecord? Opened(FlowLine flow, string who, string[] pages) => pages.Select(p => HandoverPages.Open(flow.Desk, who, p).Seen.Record).Last();

    private static JournalRecord? Hazard(FlowLine flow)
    {
        flow.Line.Carry("isolation", "mud-pump", "seal change", null, ("permit", "4417"));
        return null;
    }
}
