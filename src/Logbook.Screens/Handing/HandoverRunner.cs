using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>Runs the handover's effects through the same functions as the commands.</summary>
internal sealed class HandoverRunner(Desk desk, Pins pins)
{
    /// <summary>The next page that this person has still to read, or that there is none.</summary>
    public Message Next(string by)
    {
        desk.Follow();
        var missing = Missing(by);
        return missing.Count > 0 ? Show(by, missing[0])[0] : new AllRead(HazardQuestions.For(desk, by), BeforeSigning.Receiver(desk, by));
    }

    public IReadOnlyList<Message> Show(string by, string name)
    {
        var (page, upTo) = HandoverPages.Draw(desk, by, name);
        return page is null ? [new Troubled($"{name} is no page of the handover")] : [new PageShown(page, upTo, Missing(by))];
    }

    public IReadOnlyList<Message> See(SeePage see)
    {
        var seen = HandoverPages.Saw(desk, see.By, see.Page, see.UpTo);
        return seen.Record is null ? [new Troubled(Words(seen))] : [];
    }

    /// <summary>The page is unread again, and drawn.</summary>
    public IReadOnlyList<Message> Miss(MissQuestion missed) => Accepting.Miss(desk, missed.By, missed.Question) is { Record: null } not
        ? [new Troubled(Words(not))]
        : Show(missed.By, "hazards");

    public IReadOnlyList<Message> Do(Hand hand) =>
        [new StepTaken(hand.Step, hand.Step.Take(desk, new SignWith(pins, _ => hand.Pin.Reveal(), hand.Witness)))];

    /// <summary>Why nothing was written, in one line.</summary>
    public static string Words(Handed handed) => InKeys.Of(handed.Refused ?? string.Join("; ", handed.Mistakes));

    /// <summary>Who took the line in an emergency has its unread pages left; who takes it over, what a receiver must see.</summary>
    private IReadOnlyList<string> Missing(string by) =>
        desk.State.Line.Holder is { } holder && holder.Code.Equals(by, StringComparison.OrdinalIgnoreCase) ? desk.State.Line.Unread : HandoverPages.Missing(desk, by);
}
