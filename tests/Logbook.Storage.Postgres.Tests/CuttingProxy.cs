using System.Buffers.Binary;
using System.Net;
using System.Net.Sockets;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>
/// Passes connections on to a server, message by message, and cuts both ends before a chosen message is passed on: what comes
/// before it has arrived, it has not. The frames are those of PostgreSQL's protocol 3: a type byte (none in the very first
/// message) and a length.
/// </summary>
internal sealed class CuttingProxy : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly int _server;
    private readonly bool _fromServer;
    private int _messages;
    private int _cutAt;
    private int _open;

    /// <param name="server">The server's port.</param>
    /// <param name="fromServer">Counts what the server says; else what the client says.</param>
    public CuttingProxy(int server, bool fromServer)
    {
        (_server, _fromServer) = (server, fromServer);
        _listener.Start();
        _ = Task.Run(Serve);
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>Messages that were seen since it was armed, in the direction that counts.</summary>
    public int Messages => Volatile.Read(ref _messages);

    /// <summary>Cuts at the message of that number, from 1, counted from now on; at none when 0.</summary>
    public void Arm(int cutAt)
    {
        SpinWait.SpinUntil(() => Volatile.Read(ref _open) == 0); // the last words of the connection before are not to be counted
        Volatile.Write(ref _messages, 0);
        Volatile.Write(ref _cutAt, cutAt);
    }

    public void Dispose() => _listener.Stop();

    private async Task Serve()
    {
        while (true)
        {
            try
            {
                var client = await _listener.AcceptTcpClientAsync();
                Interlocked.Increment(ref _open);
                _ = Task.Run(() => Connect(client));
            }
            catch (Exception over) when (over is SocketException or ObjectDisposedException or InvalidOperationException)
            {
                return;
            }
        }
    }

    private async Task Connect(TcpClient client)
    {
        try
        {
            using var server = new TcpClient();
            await server.ConnectAsync(IPAddress.Loopback, _server);
            (client.NoDelay, server.NoDelay) = (true, true);
            var up = Pass(client.GetStream(), server.GetStream(), counts: !_fromServer, hasType: false);
            var down = Pass(server.GetStream(), client.GetStream(), counts: _fromServer, hasType: true);
            await Task.WhenAny(up, down);
        }
        finally
        {
            client.Dispose();
            Interlocked.Decrement(ref _open);
        }
    }

    private async Task Pass(NetworkStream from, NetworkStream to, bool counts, bool hasType)
    {
        try
        {
            while (true)
            {
                var message = await Message(from, hasType);
                hasType = true;
                if (counts && Interlocked.Increment(ref _messages) == Volatile.Read(ref _cutAt))
                    return;
                await to.WriteAsync(message);
            }
        }
        catch (Exception ended) when (ended is IOException or ObjectDisposedException)
        {
            // One side is gone: the other is closed with it.
        }
    }

    private static async Task<byte[]> Message(NetworkStream from, bool hasType)
    {
        var head = new byte[hasType ? 5 : 4];
        await from.ReadExactlyAsync(head);
        var rest = new byte[BinaryPrimitives.ReadInt32BigEndian(head.AsSpan(head.Length - 4)) - 4];
        await from.ReadExactlyAsync(rest);
        return [.. head, .. rest];
    }
}
