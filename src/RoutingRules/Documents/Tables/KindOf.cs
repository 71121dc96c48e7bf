using System.Buffers;
using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>How a value of a type is read and written.</summary>
internal abstract class Kind<T> : Kind
{
    /// <summary>The value that <see cref="Kind.TryRead"/> put into a slot.</summary>
    public abstract T Load(in Slot slot);

    public abstract void Write(Utf8JsonWriter json, T value);

    /// <summary>What a reader would refuse of a value made by code; null when a document can say it. Kinds with a cheaper way take it.</summary>
    public virtual Unwritable? Check(T value)
    {
        if (value is null)
        {
            return Unwritable.Of("nothing stands here");
        }

        try
        {
            var buffer = new ArrayBufferWriter<byte>();
            using (var writer = new Utf8JsonWriter(buffer))
            {
                Write(writer, value);
            }

            using var session = new ReadSession(ReadLimits.Default, 0);
            var json = new Utf8JsonReader(buffer.WrittenSpan, new JsonReaderOptions { MaxDepth = ReadLimits.Default.ExtensionDepth + 2 });
            json.Read();
            return TryRead(ref json, session, out _) ? null : Unwritable.Of("a reader would refuse it");
        }
        catch (Exception fault) when (fault is ArgumentException or InvalidOperationException or JsonException or ReadStoppedException)
        {
            return Unwritable.Of("a reader would refuse it");
        }
    }
}
