using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using RoutingRules.Documents.Tables;

namespace RoutingRules.Documents;

/// <summary>Writes any kind of document by its table.</summary>
internal static class DocumentWriter
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <exception cref="ArgumentException">A member holds what a reader would refuse.</exception>
    public static void Write<T>(T document, ObjectTable<T> table, IBufferWriter<byte> output)
        where T : class
    {
        Writable.Demand(document, table, nameof(document));
        WriteChecked(document, table, output);
    }

    /// <summary>Writes what is known to be good.</summary>
    public static void WriteChecked<T>(T document, ObjectTable<T> table, IBufferWriter<byte> output)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(output);
        using (var json = new Utf8JsonWriter(output, Layout))
        {
            table.Write(json, document);
        }

        output.Write("\n"u8);
    }

    public static byte[] ToUtf8<T>(T document, ObjectTable<T> table)
        where T : class
    {
        var buffer = new ArrayBufferWriter<byte>();
        Write(document, table, buffer);
        return buffer.WrittenSpan.ToArray();
    }
}
