namespace Logbook.Screens;

/// <summary>The state with which a terminal begins.</summary>
internal static class Opening
{
    /// <summary>Now; over it what was left unsaved, and over that the question who is typing, when nobody said so.</summary>
    public static Session Of(Facts facts, string? by, IReadOnlyList<LeftDraft> left)
    {
        var session = new Session(facts) { By = facts.Site.FindPerson(by ?? "")?.Code, Left = [.. left] };
        session = left.Count == 0 ? session : session.Open(new LeftPage());
        session = session.By is null ? session.Open(WhoPage.Typing()) : session;
        return by is not null && session.By is null ? session.Say($"'{by}' is not a person of this site") : session;
    }
}
