namespace Logbook.Screens;

/// <summary>One page of the screen. Enter opens the next one, Esc goes back.</summary>
internal abstract record Page
{
    public abstract KeyTable Keys { get; }

    /// <summary>Letters are text here just now, so that none of them commands anything.</summary>
    public virtual bool IsWriting => false;

    /// <summary>The page with one line of pasted text in it; null where nothing can be pasted.</summary>
    public virtual Page? Pasted(string line) => null;

    /// <summary>What the marks of this page mean, for the help.</summary>
    public virtual (string Title, IReadOnlyList<string> Marks) Legend => ("", []);

    public abstract Layout Draw(Session session);
}
