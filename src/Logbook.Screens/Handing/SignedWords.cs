using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What exactly a PIN signs, in words: it stands above the field.</summary>
internal static class SignedWords
{
    public static IEnumerable<(string Label, string Text)> Of(Session session, HandStep step) => step switch
    {
        PrepareNote prepare => OfNote(session, prepare.Request),
        TakeOver take => OfTaking(session, take.Request),
        ShortRelief relief => [("you watch", relief.Words)],
        Countersign sign => [("what", Countersigning.Words(session.Site, sign.Open)), ("found", sign.Why)],
        CloseItem close =>
        [
            ("closes", $"{Say.Kind(close.Item.ItemKind)}, {Say.Equipment(session.Site, close.Item.On)}: {close.Item.Text} {Say.Ref(close.Item.Id)}"),
            .. close.Item.ItemKind == "isolation" ? [("locks", Locks(session, close))] : Array.Empty<(string, string)>(),
            ("ended", close.Closed.Why),
        ],
        CountOut count =>
        [
            ("permit", $"{Say.Visible(count.Item.Fields.GetValueOrDefault("number", ""))}, {Say.Equipment(session.Site, count.Item.On)}: {count.Item.Text} {Say.Ref(count.Item.Id)}"),
            ("inside", $"{Say.Visible(count.Look.Fields.GetValueOrDefault("inside", "nobody goes in"))}; before, {(count.Item.Fields.TryGetValue("inside", out var before) ? Say.Visible(before) : "nobody had counted")}"),
            .. count.Look.Changed is { } changed ? [("changed", changed)] : Array.Empty<(string, string)>(),
        ],
        LookAtOwn { Why: { } why } look => [("of", Say.Person(session.Site, look.Of)), ("because", why)],
        AnswerOwn answer => [("answer", answer.Text)],
        _ => [],
    };

    /// <summary>The locks as they are recorded now: the isolation goes off every page with this, and the board must not say otherwise.</summary>
    private static string Locks(Session session, CloseItem close)
    {
        var locks = session.Facts.Now.Carried.FirstOrDefault(i => i.Id == close.Item.Id)?.Locks ?? close.Item.Locks;
        string[] told =
        [
            .. close.Closed.Lock == "off" ? [$"{Say.Person(session.Site, close.By)}, your own, comes off with it"] : Array.Empty<string>(),
            .. locks.Where(code => close.Closed.Lock is null || !code.Equals(close.By, StringComparison.OrdinalIgnoreCase)).Select(code => $"{Say.Person(session.Site, code)}, RECORDED AS ON"),
        ];
        return (told.Length == 0 ? "none is recorded here" : string.Join("; ", told)) + "; the lock board rules";
    }

    private static IEnumerable<(string, string)> OfNote(Session session, PrepareRequest request) =>
    [
        .. BeforeSigning.Contradicted(session.Site, session.Facts.Equipment, session.Facts.Now.Carried, session.Clock).Select(l => (l.Label, l.Text)),
        .. BeforeSigning.Giver(request.Declared).Select(l => (l.Label, l.Text)),
        .. request.IfThen.Select(l => ("if, then", l)),
        .. request.Words.Select(l => ("own words", l)),
    ];

    /// <summary>The receiver's own lines first; only beside them what the other side wrote, and what was answered to the receiver.</summary>
    private static IEnumerable<(string, string)> OfTaking(Session session, AcceptRequest request) =>
    [
        .. request.First.Select(l => ("I check", l)),
        .. request.Reservation is { } but ? [("reserving", but)] : Array.Empty<(string, string)>(),
        .. request.Unattended is { } alone ? [("alone", alone)] : Array.Empty<(string, string)>(),
        .. session.Taking.Told.Select(l => (l.Label, l.Text)),
    ];
}
