using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>What the audit says of one person: off, unless everything that the policy and the rules ask for is there.</summary>
public class OwnLooksTests
{
    private const string Policy = """
        [policy]
        purpose = "to find instruments that are hard to read"
        readers = ["sup1"]
        retention = "answers stay as long as the log"
        consultation = "agreed with the crews on 2026-01-15"
        """;

    // Walks 700 and 730 lie in the last week, in day shifts; every handover is at a multiple of six.
    private const int One = 700, Other = 724;

    [Fact]
    public void Without_a_policy_nothing_is_computed_of_anybody()
    {
        using var flow = EightWeeks.Write("", One, Other);

        Assert.Contains("cites no policy", Look(flow, "op1", "op1").Refused, StringComparison.Ordinal);
        Assert.Null(Look(flow, "op1", "op1").Own);
        Assert.Contains("cites no policy", OwnLooks.Answer(flow.Desk, flow.Sign(), "op1", "nothing to say").Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void Eight_weeks_under_the_policy_are_needed()
    {
        using var flow = new FlowLine("2026-11-02T07:05-05:00");
        flow.Line.AdoptPolicy();
        flow.Line.Clock("2026-12-20T07:05-05:00");

        Assert.Contains("eight weeks of walks are whole on Mon 28 Dec", Look(flow, "op1", "op1").Refused, StringComparison.Ordinal);
        Assert.Null(Look(flow.Line.Clock("2026-12-29T07:05-05:00"), flow, "op1").Refused);
    }

    [Fact]
    public void Two_signals_in_different_shifts_are_shown_with_what_explains_and_what_would_settle_them()
    {
        using var flow = EightWeeks.Write(Policy, One, Other);
        var who = Typed(flow, One);
        Assert.Equal(who, Typed(flow, Other));

        var own = Look(flow, who, who).Own!;

        Assert.Equal(2, own.Count(l => l.Label == "signal"));
        Assert.All(own.Where(l => l.Label == "signal"), l => Assert.Contains("8 of 8 equal", l.Text, StringComparison.Ordinal));
        Assert.Contains(own, l => l.Text.StartsWith("Also seen when", StringComparison.Ordinal));
        Assert.Contains(own, l => l.Text.StartsWith("Would settle", StringComparison.Ordinal));
        // 0.99 x 0.01 honest against 0.01 x 0.5 others: 0.0099 of 0.0149, two of three, by hand.
        Assert.Contains(own, l => l.Label == "worth" && l.Text.Contains("of a hundred who are flagged 66 are honest", StringComparison.Ordinal));
        Assert.Contains(own, l => l.Label == "seen by" && l.Text.Contains("Supervisor one", StringComparison.Ordinal));
        Assert.DoesNotContain(Look(flow, who == "op1" ? "op2" : "op1", who == "op1" ? "op2" : "op1").Own!, l => l.Label == "signal");
    }

    [Fact]
    public void A_single_signal_is_not_shown()
    {
        using var flow = EightWeeks.Write(Policy, One);
        var who = Typed(flow, One);

        var own = Look(flow, who, who).Own!;

        Assert.Contains(Audit.Between(flow.Desk, flow.Desk.Now.AddDays(-56), flow.Desk.Now, "same-as-earlier"), f => f.Seq is not null);
        Assert.DoesNotContain(own, l => l.Label == "signal");
        Assert.Contains(own, l => l is { Label: "shown" } && l.Text.StartsWith("nothing", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_typed_under_a_code_that_did_not_hold_the_line_by_pin_is_nobodys()
    {
        using var flow = EightWeeks.Write(Policy, One, Other);
        var who = Typed(flow, One);
        var before = Walks(Look(flow, who, who).Own!);

        flow.Line.Record(new EntryRequest(flow.Holder == "op1" ? "op2" : "op1", [Testing.Some.Reading("P-1", "50.0")]) { Round = "walk" });
        Relieving.Emergency(flow.Desk, who, "1");
        flow.Line.Record(new EntryRequest(who, [Testing.Some.Reading("P-2", "50.0")]) { Round = "walk" });

        Assert.Equal(before, Walks(Look(flow, who, who).Own!));
    }

    [Fact]
    public void A_reader_sees_it_after_the_person_has_answered_and_the_person_sees_who_looked()
    {
        using var flow = EightWeeks.Write(Policy, One, Other);

        Assert.Contains("has not looked and answered", Look(flow, "sup1", "op1", "asked by op1").Refused, StringComparison.Ordinal);
        Assert.Contains("the policy lets Supervisor one look", Look(flow, "op2", "op1", "curious").Refused, StringComparison.Ordinal);
        Assert.NotNull(OwnLooks.Answer(flow.Desk, flow.Sign(), "op1", "the gauges stood still that night").Record);
        Assert.NotEmpty(Look(flow, "sup1", "op1", null).Mistakes);

        var shown = Look(flow, "sup1", "op1", "asked by op1");

        Assert.IsType<PersonChanged>(shown.Record!.Body);
        Assert.Contains(shown.Own!, l => l.Label == "answer" && l.Text.Contains("stood still that night", StringComparison.Ordinal));
        Assert.Contains(Look(flow, "op1", "op1").Own!, l => l.Label == "looked" && l.Text.Contains("Supervisor one", StringComparison.Ordinal) && l.Text.Contains("asked by op1", StringComparison.Ordinal));
        flow.Line.Clock(flow.Desk.Now.AddDays(15));
        Assert.Contains("has not looked and answered", Look(flow, "sup1", "op1", "again").Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void Nobody_sees_it_without_the_own_pin_and_no_record_holds_anything_of_it()
    {
        using var flow = EightWeeks.Write(Policy, One, Other);
        var who = Typed(flow, One);
        var records = flow.Desk.Store.Head.Seq;

        Assert.Contains("is not", OwnLooks.Look(flow.Desk, flow.Sign("935172"), who, who, null).Refused, StringComparison.Ordinal);
        Assert.NotNull(Look(flow, who, who).Own);

        Assert.Equal(records, flow.Desk.Store.Head.Seq);
        OwnLooks.Answer(flow.Desk, flow.Sign(), who, "seen");
        Look(flow, "sup1", who, "asked");
        Assert.All(flow.Desk.Store.Read(records + 1), r => Assert.DoesNotContain("equal those of", System.Text.Encoding.UTF8.GetString(r.Bytes.Span), StringComparison.Ordinal));
    }

    [Fact]
    public void Walking_and_typing_at_once_is_shown_by_itself()
    {
        using var flow = new FlowLine("2026-11-02T07:05-05:00").HeldBy("op1");
        flow.Line.AdoptPolicy();
        flow.Line.Clock("2026-12-29T07:01-05:00");
        flow.HandedTo("op2");
        flow.Line.Clock("2026-12-29T08:10-05:00");
        flow.Line.Record(new EntryRequest("op2", [Testing.Some.Reading("WT-L", "61.0")]));
        flow.Line.Clock("2026-12-29T08:30-05:00");
        var walk = SmallLine.At("2026-12-29T08:00-05:00");
        flow.Line.Record(new EntryRequest("op2", [Testing.Some.Reading("ST-H2S", "0.1")]) { Round = "field", WalkStart = walk, WalkEnd = walk.AddMinutes(25) });

        Assert.Contains("typed at host:tty1 under the same code at 08:10", Assert.Single(Look(flow, "op2", "op2").Own!, l => l.Label == "signal").Text, StringComparison.Ordinal);
    }

    private static Handed Look(FlowLine flow, string by, string of, string? why = null) => OwnLooks.Look(flow.Desk, flow.Sign(), by, of, why);

    private static Handed Look(SmallLine _, FlowLine flow, string who) => Look(flow, who, who);

    private static string Typed(FlowLine flow, int walk) => flow.Desk.Store.Read().Where(r => r.Body is Entry).ElementAt(walk).By;

    private static string Walks(IReadOnlyList<NoteLine> own) => own.Single(l => l.Label == "of").Text;
}
