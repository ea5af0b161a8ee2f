using Logbook.Contracts;

namespace Logbook.Testing;

/// <summary>Runs calculations on the thread that asks, without a deadline: for tests, where an exception should be seen.</summary>
public sealed class InlineGuard : IGuard
{
    public T Run<T>(Func<GuardedCall, T> pass) => pass((calculation, inputs) => calculation.Run(inputs));
}
