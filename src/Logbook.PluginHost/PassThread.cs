using System.Collections.Concurrent;

namespace Logbook.PluginHost;

/// <summary>
/// A background thread for passes and the loading of plug-ins, one after the other: to start a thread takes longer than most passes. One is kept for the
/// next pass; another is made when that one is at work. A thread that is stuck in a plug-in is left behind.
/// </summary>
internal sealed class PassThread
{
    private static PassThread? _idle;

    private readonly BlockingCollection<Task> _passes = [];

    private PassThread() => new Thread(Work) { IsBackground = true, Name = "calculations" }.Start();

    public static PassThread Take() => Interlocked.Exchange(ref _idle, null) ?? new PassThread();

    /// <summary>For the next pass.</summary>
    public void GiveBack() => Interlocked.Exchange(ref _idle, this)?.Leave();

    /// <summary>It ends with the pass it is in, or with the program.</summary>
    public void Leave() => _passes.CompleteAdding();

    public Task<T> Start<T>(Func<T> pass)
    {
        var task = new Task<T>(pass);
        _passes.Add(task);
        return task;
    }

    private void Work()
    {
        foreach (var pass in _passes.GetConsumingEnumerable())
        {
            pass.RunSynchronously(TaskScheduler.Default);
        }
    }
}
