using System.Runtime.InteropServices;
using Logbook.Contracts;

namespace Logbook.PluginHost;

/// <summary>Which calculation is running in a pass and how long each has run so far, so that an overrun has a culprit.</summary>
internal sealed class PassWatch
{
    private readonly Lock _lock = new();
    private readonly Dictionary<ICalculation, long> _spent = [];
    private ICalculation? _running;
    private long _since = Environment.TickCount64;
    private bool _abandoned;

    /// <summary>Ids of calculations that failed in this pass; read after the pass has ended.</summary>
    public HashSet<string> Failed { get; } = new(StringComparer.Ordinal);

    public void Begin(ICalculation calculation)
    {
        lock (_lock)
        {
            StopIfAbandoned();
            _running = calculation;
        }
    }

    public void End()
    {
        lock (_lock)
        {
            StopIfAbandoned();
            Add();
            _running = null;
        }
    }

    /// <summary>
    /// Gives the pass up and names the calculation that used most of its time. Null when no calculation has run yet: then
    /// the machine is slow and there is nobody to blame, so the pass goes on.
    /// </summary>
    public ICalculation? Abandon()
    {
        lock (_lock)
        {
            Add();
            if (_spent.Count == 0)
            {
                return null;
            }

            _abandoned = true;
            return _spent.MaxBy(s => s.Value).Key;
        }
    }

    // One look at a coarse clock for each call: a pass makes thousands of them, what passes between two is next to nothing, and an
    // overrun is told in seconds.
    private void Add()
    {
        if (_running is not null && Environment.TickCount64 is var now && now > _since)
        {
            CollectionsMarshal.GetValueRefOrAddDefault(_spent, _running, out _) += now - _since;
            _since = now;
        }
    }

    // The pass is being run again on another thread: this one must not go on beside it.
    private void StopIfAbandoned()
    {
        if (_abandoned)
        {
            throw new OperationCanceledException();
        }
    }
}
