namespace RoutingRules.Tests.Documents;

/// <summary>A stream that gives a few bytes at a time, like a pipe, and may fail at its end.</summary>
internal sealed class DripStream(byte[] content, int step, bool fails = false) : Stream
{
    private int given;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => given;
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        var length = Math.Min(Math.Min(step, count), content.Length - given);
        if (length == 0 && fails)
        {
            throw new IOException("The cable came out.");
        }

        Array.Copy(content, given, buffer, offset, length);
        given += length;
        return length;
    }

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
