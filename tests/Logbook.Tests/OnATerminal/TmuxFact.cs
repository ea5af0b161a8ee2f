namespace Logbook.Tests;

/// <summary>A test on a real terminal: skipped, and says why, where there is no tmux to make one.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class TmuxFactAttribute : FactAttribute
{
    public TmuxFactAttribute()
    {
        if (Tmux.WhyNot() is { } why)
        {
            Skip = why;
        }
    }
}
