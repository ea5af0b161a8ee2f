using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;
using Microsoft.Extensions.Time.Testing;

namespace Logbook.Screens.Tests;

/// <summary>A person at a terminal of the small line: keys go in, the screen is read. At five past nine, an hour after the last round.</summary>
internal sealed class Terminal : IDisposable
{
    private const string MoreRounds = """
        [[round]]
        id = "titration"
        title = "White liquor titration"
        every = "2h"
        points = ["WL-A", "WL-B", "WL-C"]

        [[round]]
        id = "walk"
        title = "Field walk"
        every = "4h"
        early = "1h"
        late = "3h"
        place = "field"
        points = ["SL-HATCH", "SL-I"]

        [[person]]
        code = "op3"
        name = "Operator three"
        role = "operator"
        crew = "C"

        [[person]]
        code = "sup1"
        name = "Supervisor"
        role = "supervisor"

        [[equipment]]
        code = "lime-screw"
        """;

    private readonly string _folder;
    private DraftFolder _drafts;

    private const string Policy = """

        [policy]
        purpose = "to mend rounds"
        readers = ["sup1"]
        retention = "answers stay as long as the log"
        consultation = "agreed with the crews"

        [[equipment]]
        code = "lime-screw"
        """;

    private const string Acid = """

        [[caution]]
        hazard = "Acid"
        trigger = ["state:acid", "carry:wash"]
        text = "Acid on liquor frees hydrogen sulphide, which kills."
        ppe = "Gas meter, face shield."
        first_aid = "Fresh air, and nobody goes in without breathing air."
        source = "common practice, no source"
        revision = "1"
        approved_by = ""
        """;

    private static SiteFiles WithAcid(SiteFiles files) =>
        new(files.Texts.ToDictionary(t => t.Key, t => t.Key == SiteFiles.CautionsToml ? t.Value + "\n" + Acid : t.Value, StringComparer.Ordinal));

    /// <param name="policy">The site cites a policy.</param>
    /// <param name="days">For how long it has.</param>
    /// <param name="changed">Words replaced in the site's files.</param>
    public Terminal(string? by = "op1", IJournalStore? journal = null, Action<Terminal>? before = null, bool policy = false, int days = 63, (string Old, string New)[]? changed = null)
    {
        _folder = Directory.CreateTempSubdirectory("logbook-screens-").FullName;
        Clock = new FakeTimeProvider(Some.Morning.AddMinutes(policy ? -days * 24 * 60 : -58));
        Journal = journal ?? new InMemoryJournal();
        Desk = Some.Desk(Clock, Journal, WithAcid(Some.Changed([("[[equipment]]\ncode = \"lime-screw\"", policy ? MoreRounds.Replace("\n\n[[equipment]]\ncode = \"lime-screw\"", Policy, StringComparison.Ordinal) : MoreRounds), .. changed ?? []])));
        foreach (var person in Desk.Site.People)
        {
            Pins.Set(person.Code, Pin);
        }

        if (policy)
        {
            Saved(Writing.Remark(Desk, "the log begins", null, null, "op1"));
            At(-58);
        }

        Record("hourly", "SL-T1=99.6", "SL-F1=301", "LM-F1=18.9", "LM-CAO=88.0");
        before?.Invoke(this);
        At(5);
        _drafts = new DraftFolder(_folder, "host:tty1");
        Conversation = new Conversation(Desk, by, _drafts, Pins);
    }

    public FakeTimeProvider Clock { get; }

    public const string Pin = "270451";

    public IJournalStore Journal { get; }

    /// <summary>Everybody has the same PIN, at the cost of one round.</summary>
    public Pins Pins { get; } = new(new PinsInMemory(), rounds: 1);

    public Desk Desk { get; }

    public Conversation Conversation { get; private set; }

    public Session State => Conversation.State;

    public string Screen => Conversation.Sheet.Text;

    /// <summary>The screen's words, however they are broken into lines.</summary>
    public string Words => string.Join(' ', Screen.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    public string Folder => _folder;

    /// <summary>The round on the screen or under it.</summary>
    public RoundPage Round => State.Pages.OfType<RoundPage>().Single();

    /// <summary>Minutes after nine.</summary>
    public Terminal At(double minutes)
    {
        Clock.SetUtcNow(Some.Morning.AddMinutes(minutes));
        return this;
    }

    /// <summary>Text as it is typed; <c>⏎</c> Enter, <c>⎋</c> Esc, <c>↑ ↓</c> arrows, <c>⇞ ⇟</c> page keys, <c>⌫</c> Backspace, <c>⌦</c> Delete.</summary>
    public Terminal Press(string keys)
    {
        foreach (var rune in keys.EnumerateRunes())
        {
            Conversation.Take(new Pressed(rune.ToString() switch
            {
                "⏎" => new Keystroke(KeyName.Enter),
                "⎋" => new Keystroke(KeyName.Esc),
                "↑" => new Keystroke(KeyName.Up),
                "↓" => new Keystroke(KeyName.Down),
                "⇞" => new Keystroke(KeyName.PageUp),
                "⇟" => new Keystroke(KeyName.PageDown),
                "⌫" => new Keystroke(KeyName.Backspace),
                "⌦" => new Keystroke(KeyName.Delete),
                "←" => new Keystroke(KeyName.Left),
                "→" => new Keystroke(KeyName.Right),
                _ => new Keystroke(KeyName.Written, rune),
            }));
            Finish();
        }

        return this;
    }

    /// <summary>What is slow comes to its end.</summary>
    public Terminal Finish()
    {
        SpinWait.SpinUntil(() =>
        {
            Conversation.Work();
            return !Conversation.Waiting;
        });
        return this;
    }

    /// <summary>One key, while what is slow is not done.</summary>
    public Terminal PressAtOnce(char key)
    {
        Conversation.Take(new Pressed(key switch { '⎋' => new Keystroke(KeyName.Esc), '⏎' => new Keystroke(KeyName.Enter), _ => Keystroke.Of(key) }));
        return this;
    }

    /// <summary>The line is taken from nobody, as a new journal begins.</summary>
    public Terminal HeldBy(string code)
    {
        foreach (var page in LineHeld.Pages)
        {
            HandoverPages.Open(Desk, code, page);
        }

        var request = new AcceptRequest(code, ["walk the line"], [.. HazardQuestions.For(Desk, code).Select(q => q.Right)]) { Unattended = "new log" };
        _ = Accepting.Accept(Desk, new SignWith(Pins, _ => Pin), request).Record ?? throw new InvalidOperationException("the line was not taken");
        return this;
    }

    /// <summary>Answers the question on the screen rightly, or wrongly.</summary>
    public Terminal Answer(bool rightly = true)
    {
        var page = (QuestionPage)State.Top;
        var right = page.Questions[page.At].Right;
        return Press(FormattableString.Invariant($"{(rightly ? right : (right % 3) + 1)}⏎"));
    }

    public Terminal Paste(string text)
    {
        Conversation.Take(new Pasted(text));
        return this;
    }

    public Terminal Size(int width, int height)
    {
        Conversation.Take(new Resized(width, height));
        return this;
    }

    public Terminal Tick(double minutes)
    {
        Clock.Advance(TimeSpan.FromMinutes(minutes));
        Conversation.Take(new Ticked());
        return this;
    }

    /// <summary>From Now into the round on this place of the list.</summary>
    public Terminal Open(string round)
    {
        Press("r");
        for (var row = 1; row < 9; row++)
        {
            Press(FormattableString.Invariant($"↑{row}"));
            if (Screen.Split('\n').Any(l => l.StartsWith(" >", StringComparison.Ordinal) && l.Contains(round, StringComparison.Ordinal)))
            {
                return Press("⏎");
            }
        }

        throw new InvalidOperationException($"no {round} to choose:\n{Screen}");
    }

    /// <summary>The session ends as when its process is killed; another one starts on the same folder.</summary>
    public Terminal Crash(Action? between = null)
    {
        _drafts.Dispose();
        between?.Invoke();
        _drafts = new DraftFolder(_folder, "host:tty2");
        Conversation = new Conversation(Desk, null, _drafts, Pins);
        return this;
    }

    public long Record(string? round, params string[] readings) => Saved(RecordEntry.Run(Desk, Some.Entry(readings) with { Round = round }));

    public long Carry(string kind, string on, string text, DateTimeOffset? until = null, params (string Name, string Value)[] fields) =>
        Saved(Writing.AddCarried(Desk, new Carry(kind, on, text, until, null, fields.ToDictionary(f => f.Name, f => f.Value, StringComparer.Ordinal)), "op1"));

    /// <summary>Entries that were typed here, oldest first.</summary>
    public IReadOnlyList<Entry> Entries => [.. Journal.Read().Where(r => r.Entered >= Some.Morning.AddMinutes(5)).Select(r => r.Body).OfType<Entry>()];

    /// <summary><c>SL-T1=103.4</c> each, over all entries that were typed here.</summary>
    public string Typed => string.Join(' ', Entries.SelectMany(e => e.Readings).Select(r => $"{r.Point}={r.Typed ?? "-"}"));

    public void Dispose()
    {
        _drafts.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static long Saved(Written written) => written.Record?.Seq ?? throw new InvalidOperationException(string.Join("; ", written.Mistakes));
}
