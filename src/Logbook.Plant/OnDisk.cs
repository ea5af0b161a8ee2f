namespace Logbook.Plant;

/// <summary>Work on files, which the system may refuse at any time: the refusal comes back, whatever else goes wrong is thrown.</summary>
public static class OnDisk
{
    /// <summary>What the work gives; null when it was refused.</summary>
    /// <param name="refused">An <see cref="IOException"/> or an <see cref="UnauthorizedAccessException"/>; null when it was not refused.</param>
    public static T? Try<T>(Func<T?> work, out SystemException? refused)
        where T : class
    {
        T? given = null;
        refused = Refusal(() => given = work());
        return refused is null ? given : null;
    }

    /// <summary>Why the work was refused; null when it was done.</summary>
    public static SystemException? Refusal(Action work)
    {
        try
        {
            work();
            return null;
        }
        catch (IOException refused)
        {
            return refused;
        }
        catch (UnauthorizedAccessException refused)
        {
            return refused;
        }
    }
}
