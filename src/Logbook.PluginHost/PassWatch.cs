using System.Diagnostics;
using Logbook.Contracts;

namespace Logbook.PluginHost;

/// <summary>Which calculation is running in a pass and how long each has run so far, so that an overrun has a culprit.</summary>
internal sealed class PassWatch
{
    private readonly Lock _lock = new();
    private readonly Dictionary<ICalculation, long> _spent = [];
    private ICalculation? _running;
    private long _since;
    private bool _abandoned;

    /// <summary>Ids of calculations that failed in this pass; read after the pass has ended.</summary>
    public HashSet<string> Failed { get; } = new(StringComparer.Ordinal);

    public void Begin(ICalculation calculation)
    {
        lock (_lock)
        {
            StopIfAbandoned();
            _running = calculation;
            _since = Stopwatch.GetTimestamp();
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

    private void Add()
    {
        if (_running is not null)
        {
            _spent[_running] = _spent.GetValueOrDefault(_running) + Stopwatch.GetElapsedTime(_since).Ticks;
            _since = Stopwatch.GetTimestamp();
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
