namespace RoutingRules.Cli.Output;

/// <summary>
/// Standard output or error that does not keep a stopped run waiting: a pipe whose reader rests blocks for ever, and only a wait can be interrupted.
/// </summary>
/// <remarks>The system's streams wait for one another, so that a message cannot be said while the output is stuck.</remarks>
/// <param name="inner">Where it goes; stays open.</param>
/// <param name="cancellation">The stop.</param>
internal sealed class StoppableOutput(Stream inner, CancellationToken cancellation) : Stream
{
    /// <summary>How long what is there already may take once the run is stopped.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromMilliseconds(500);

    private bool isGivenUp;

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (!cancellation.CanBeCanceled)
        {
            inner.Write(buffer);
            return;
        }

        var content = buffer.ToArray();
        Wait(() => inner.Write(content));
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Flush() => Wait(inner.Flush);

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    private void Wait(Action work)
    {
        if (isGivenUp)
        {
            return;
        }

        var working = Task.Run(work, CancellationToken.None);
        try
        {
            working.WaitAsync(cancellation).GetAwaiter().GetResult();
        }
        catch (OperationCanceledException)
        {
            try
            {
                working.WaitAsync(Grace, CancellationToken.None).GetAwaiter().GetResult();
            }
            catch (TimeoutException)
            {
                // Later pieces without this one would be another text.
                isGivenUp = true;
                throw new OperationCanceledException(cancellation);
            }
        }
    }
}
