namespace Logbook.Screens;

/// <summary>One page of the screen. Enter opens the next one, Esc goes back.</summary>
internal abstract record Page
{
    public abstract KeyTable Keys { get; }

    public abstract Layout Draw(Session session);
}
