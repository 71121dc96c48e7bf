namespace RoutingRules.Cli.Tests.Rig;

/// <summary>A text that comes again and again, one piece a read.</summary>
/// <param name="content">The text.</param>
/// <param name="times">How often.</param>
/// <param name="before">Told before each piece how many were given.</param>
internal sealed class RepeatingStream(byte[] content, int times, Action<int> before) : Stream
{
    private int given;
    private int at;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        if (at == 0)
        {
            before(given);
        }

        if (given == times)
        {
            return 0;
        }

        var length = Math.Min(count, content.Length - at);
        Array.Copy(content, at, buffer, offset, length);
        at = (at + length) % content.Length;
        given += at == 0 ? 1 : 0;
        return length;
    }

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
