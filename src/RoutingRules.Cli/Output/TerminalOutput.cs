using System.Text;

namespace RoutingRules.Cli.Output;

/// <summary>A terminal: whatever is written to it, documents as well, is written so that it cannot steer it.</summary>
/// <param name="inner">The terminal; stays open.</param>
internal sealed class TerminalOutput(Stream inner) : Stream
{
    private readonly Decoder decoder = Texts.Utf8.GetDecoder();
    private string held = "";

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
        var characters = new char[Texts.Utf8.GetMaxCharCount(buffer.Length)];
        Write(held + new string(characters, 0, decoder.GetChars(buffer, characters, flush: false)));
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Flush() => inner.Flush();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    /// <summary>What follows a carriage return tells what it is.</summary>
    private void Write(string text)
    {
        held = text.EndsWith('\r') ? "\r" : "";
        inner.Write(Texts.Utf8.GetBytes(SafeText.Show(text[..^held.Length])));
    }
}
