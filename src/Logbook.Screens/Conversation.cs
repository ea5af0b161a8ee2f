using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>
/// A person at one terminal: messages go in, the state moves on, what is to be done outside is done and answered, and the
/// screen is drawn from the state. The toolkit's whole part is to send messages and to draw <see cref="Sheet"/>.
/// </summary>
public sealed class Conversation
{
    private readonly Desk _desk;
    private readonly Runner _runner;
    private readonly List<Effect> _slow = [];
    private Task<IReadOnlyList<Message>>? _beside;

    /// <param name="desk">Where entries are written from; a site is in force in it.</param>
    /// <param name="by">Who is typing; asked when null.</param>
    /// <param name="drafts">What is typed and not saved.</param>
    /// <param name="pins">By which people sign.</param>
    /// <param name="told">What was said while the desk was opened; its first line stands on the screen until a key is pressed.</param>
    public Conversation(Desk desk, string? by, DraftFolder drafts, Pins pins, string told = "")
    {
        _desk = desk;
        _runner = new Runner(desk, drafts, pins);
        State = Opening.Of(_runner.Facts(), by, _runner.Left());
        State = told.Length == 0 ? State : State.Say(told.Split('\n')[0].Trim(), Look.Watch);
    }

    internal Session State { get; private set; }

    /// <summary>The person has left.</summary>
    public bool Over => State.Over;

    /// <summary>A PIN is typed, and not sent.</summary>
    public bool HasPin => State.Top is SignPage { Pin.IsEmpty: false };

    public Sheet Sheet => View.Of(State);

    /// <summary>The last line, when the screen is gone: how it ended, and what is in the draft.</summary>
    /// <param name="endedBy">What ended it; null when the person left.</param>
    public string Parting(string? endedBy) => Handover.Say.Visible(
        $"{(endedBy is null ? "Left" : $"Ended by {endedBy}")}; {(Saving.AllUnsaved(State) is { Count: > 0 } unsaved ? $"not saved, and offered again: {string.Join("; ", unsaved)}" : "nothing is unsaved")}.");

    /// <summary>Takes one message and everything that follows from it.</summary>
    /// <returns>False when the screen looks as before: a second that went by in which nothing happened.</returns>
    public bool Take(Message message)
    {
        var before = State;
        Follow(message);
        return message is not Ticked || State.Clock.Minute != before.Clock.Minute || State with { Clock = before.Clock } != before;
    }

    private void Follow(Message message)
    {
        var waiting = new Queue<Message>([message]);
        while (waiting.TryDequeue(out var next))
        {
            var step = Step.Of(State, next, new Setting(_desk.Now, Judge));
            State = step.Session;
            foreach (var effect in step.Effects.Where(e => e.IsSlow))
            {
                _slow.RemoveAll(earlier => earlier.GetType() == effect.GetType()); // nobody waits for that any more
                _slow.Add(effect);
            }

            foreach (var reply in step.Effects.Where(e => !e.IsSlow).SelectMany(_runner.Run))
            {
                waiting.Enqueue(reply);
            }
        }
    }

    /// <summary>Something slow is to be done, or is being done: see <see cref="Work"/>.</summary>
    public bool Waiting => _beside is not null || _slow.Count > 0;

    /// <summary>
    /// Begins what is slow beside the keys, or takes what came of it when it is done. It never waits: while <see cref="Waiting"/>
    /// it is called again and again, and keys are answered in between.
    /// </summary>
    /// <returns>True when something was taken and the screen is to be drawn.</returns>
    public bool Work()
    {
        if (_beside is null && _slow.Count > 0)
        {
            _beside = Task.Run(_runner.Beside(_slow[0]));
            _slow.RemoveAt(0);
        }

        if (_beside is not { IsCompleted: true } done)
        {
            return false;
        }

        _beside = null;
        foreach (var reply in done.GetAwaiter().GetResult())
        {
            Take(reply);
        }

        return true;
    }

    /// <summary>A journal that cannot be read accepts nothing, and says why.</summary>
    private Parsed<Entry> Judge(EntryRequest request)
    {
        try
        {
            return RecordEntry.Judge(_desk, request);
        }
        catch (JournalException trouble)
        {
            return new Parsed<Entry>(null, [Mistake.Typed(trouble.Message)]);
        }
    }
}
