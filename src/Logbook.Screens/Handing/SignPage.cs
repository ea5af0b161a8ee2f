using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A signature by PIN. Nothing of the PIN is drawn, not even how long it is.</summary>
/// <param name="Witness">Whose PIN is asked for, when the signer has forgotten the own one.</param>
internal sealed record SignPage(HandStep Step, Secret Pin, string? Witness) : Page, IScrolled
{
    private static readonly TimeSpan Forgets = TimeSpan.FromMinutes(1);

    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "declare anew", "Goes back to what a record has changed since it was declared.", (session, _, _) => Next.Of(Giver.Anew(session, Outdated(session))), KeyName.Enter) with { Applies = s => Outdated(s).Count > 0 },
        KeyRow.Named("Enter", "sign", "Signs.", (session, _, _) => Sign(session, Of(session)), KeyName.Enter),
        KeyRow.Letter('v', "reservation", "Before the PIN is begun: takes the line over, but not without saying this.", (session, _) => Next.Of(session.Open(ReceiverKeys.Reservation(session))))
            with { Applies = s => Of(s) is { Step: TakeOver, Pin.IsEmpty: true } },
        new KeyRow("PIN", "", "Types the PIN; it is not shown.", TextLine.IsWritten, (session, key, _) => Next.Of(session.Put(Of(session) with { Pin = Of(session).Pin.With(key.Rune.ToString()) }))),
        KeyRow.Named("Backspace", "", "Takes the last character back.", (session, _, _) => Next.Of(session.Put(Of(session) with { Pin = Of(session).Pin.Shorter() })), KeyName.Backspace),
        KeyRow.Named("Delete", "begin anew", "Takes all of it back.", (session, _, _) => Next.Of(session.Put(Of(session) with { Pin = Secret.Empty })), KeyName.Delete),
        Scrolling.Keys,
        KeyRow.Named("Tab", "forgotten", "Another person witnesses with the own PIN; your identity is to be confirmed.", (session, _, _) => Next.Of(session.Open(Other())), KeyName.Tab),
        KeyRow.Named("Esc", "back", "Back; nothing is signed.", (session, _, _) => Next.Of(session.Back()), KeyName.Esc));

    /// <summary>The first line of what is signed that is shown.</summary>
    public int Scroll { get; init; }

    public override KeyTable Keys => Table;

    public override bool IsWriting => !Pin.IsEmpty;

    public override Page? Pasted(string line) => this with { Pin = Pin.With(line) };

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session)
    {
        var who = Say.Person(session.Site, Witness ?? Step.By);
        return new Layout(
            [Line.Of(" Sign", Look.Strong), Line.Empty], Lines(session), Scroll, Scroll,
            [
                Line.Empty,
                .. Outdated(session) is { Count: > 0 } outdated ? Gutter.Lines("STOP", Look.Hurts, $"a record came since you declared {string.Join(", ", outdated)}, and it says something else now: this is not signed, Enter goes back to it", session.Width) : [],
                .. Witness is null ? [] : Gutter.Lines("witness", Look.Watch, $"{who} says by the own PIN who signs; the identity is to be confirmed later", session.Width),
                Line.Of(new Span($" PIN of {who} "), new Span("_", Look.Field), new Span("  not shown while it is typed", Look.Faint)),
            ])
        {
            Top = Scroll,
        };
    }

    /// <summary>Who signs, what exactly, and what the signature means.</summary>
    private List<Line> Lines(Session session) =>
    [
        .. Gutter.Lines("signs", Look.Strong, Say.Person(session.Site, Step.By), session.Width),
        .. SignedWords.Of(session, Step).SelectMany(l => Gutter.Lines(l.Label, Look.Strong, l.Text, session.Width)),
        .. Gutter.Lines("means", Look.Strong, $"\"{Step.Means}\"", session.Width),
    ];

    /// <summary>Who goes away in the middle leaves no PIN behind for the next one's Enter.</summary>
    public static Session Left(Session session) => session.Top is SignPage { Pin.IsEmpty: false } page && session.Clock - session.LastKey > Forgets
        ? session.Put(page with { Pin = Secret.Empty }).Say("the PIN was not sent for a minute: type it again")
        : session;

    private static SignPage Of(Session session) => (SignPage)session.Top;

    /// <summary>
    /// Sections that a record has changed since they were declared. The page stays until Enter, whatever comes meanwhile: the digits
    /// of a PIN must not fall on a page where digits declare.
    /// </summary>
    private static IReadOnlyList<string> Outdated(Session session) => session.Top is SignPage page ? Giver.Outdated(session, page.Step) : [];

    /// <summary>The PIN is used once: whatever becomes of it, it is not kept for another try.</summary>
    private static Next Sign(Session session, SignPage page) => page.Pin.IsEmpty
        ? Next.Of(session.Say("type the PIN first"))
        : Next.Of(session.Put(page with { Pin = Secret.Empty }), new Hand(page.Step, page.Pin, page.Witness));

    private static WhoPage Other() => new("Whose PIN stands for it?", "", 0, Witnessed);

    private static Next Witnessed(Session session, Person person) => Next.Of(session.Put(Of(session) with { Witness = person.Code, Pin = Secret.Empty }));
}
