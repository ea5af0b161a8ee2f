using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>Takes the line at once, without a PIN, from any page: an injured or called-away person never strands it.</summary>
/// <param name="By">Who takes it; null until it is said.</param>
/// <param name="Digit">The chosen reason; null before the first digit.</param>
internal sealed record EmergencyPage(string? By, int? Digit) : Page
{
    private static readonly KeyTable Table = new(
        new KeyRow("1-9", "choose", "Chooses the reason.", key => key.Digit is not null, Choose),
        KeyRow.Named("Enter", "TAKE THE LINE", "Takes the line at once.", (session, _, _) => Take(session), KeyName.Enter) with { WhyNot = WhyNot },
        KeyRow.Letter('i', "who", "Says who takes it.", (session, _) => Next.Of(session.Open(Who(session)))),
        UsualKeys.Back("Back; the line stays where it is."),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    /// <summary>Whoever types takes it, unless that one holds it: then it is asked who does.</summary>
    public static Next Open(Session session)
    {
        var by = session.Holds ? null : session.By;
        session = session.Open(new EmergencyPage(by, null));
        return Next.Of(by is null ? session.Open(Who(session)) : session);
    }

    public override Layout Draw(Session session) => new(
        [Line.Of(" EMERGENCY RELIEF: takes the line at once, without a PIN", Look.Urgent), Line.Of($" {session.Facts.Now.InCharge}"), Line.Empty],
        [
            .. Gutter.Lines("takes it", Look.Strong, By is { } by ? Say.Person(session.Site, by) : "not said yet: i says who", session.Width),
            .. Gutter.Lines("means", Look.Strong, $"\"{Signing.Emergency}\"; a supervisor signs for it within the shift", session.Width),
            Line.Empty,
            Line.Of(" because", Look.Strong),
            .. session.Site.Reasons.Relief.Take(9).Select((reason, i) => Line.Of($"{(Digit == i + 1 ? " >" : "  ")} {i + 1} {reason}", Digit == i + 1 ? Look.Chosen : Look.Plain)),
        ],
        0, 0, []);

    private static EmergencyPage Of(Session session) => (EmergencyPage)session.Top;

    private static WhoPage Who(Session session) => new(
        $"EMERGENCY RELIEF: who takes the line?{(Holder(session) is { } holder ? $" {Say.Person(session.Site, holder)} holds it already" : "")}", "", 0,
        (picked, person) => Next.Of(person.Code.Equals(Holder(picked), StringComparison.OrdinalIgnoreCase)
            ? picked.Open(Who(picked)).Say($"{person.Name} holds the line already: another person takes it, or Esc")
            : picked.Put(Of(picked) with { By = person.Code })));

    private static string? Holder(Session session) => session.Facts.Line.Holder?.Code;

    private static Next Choose(Session session, Keystroke key, Setting setting) => Next.Of(key.Digit >= 1 && key.Digit <= session.Site.Reasons.Relief.Take(9).Count()
        ? session.Put(Of(session) with { Digit = key.Digit })
        : session.Say($"there is no reason {key.Digit}"));

    private static string? WhyNot(Session session) => Of(session).By is null ? "say first who takes it: i" : Of(session).Digit is null ? "choose a reason by its digit first" : null;

    private static Next Take(Session session) => ReasonPage.Take(
        session, session.Site.Reasons.Relief[Of(session).Digit!.Value - 1], (taking, why) => ReceiverKeys.Step(taking, new EmergencyRelief(Of(taking).By!, why)));
}
