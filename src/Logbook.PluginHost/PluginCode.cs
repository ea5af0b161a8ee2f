namespace Logbook.PluginHost;

/// <summary>The one border at which foreign code is called.</summary>
internal static class PluginCode
{
    /// <summary>What the call gave, or one sentence about its crash.</summary>
    public static (T? Value, string? Crash) Call<T>(Func<T> call)
    {
        try
        {
            return (call(), null);
        }
#pragma warning disable CA1031 // whatever a plug-in throws must end here, as a finding
        catch (Exception e)
#pragma warning restore CA1031
        {
            return (default, $"{e.GetType().Name}: {FolderVetting.Visible(e.Message)}");
        }
    }
}
