using System.Text;

namespace RoutingRules.Fixing;

/// <summary>Applies the additions, removals and replacements of a JSON Patch to the text of a document; what they do not touch keeps its bytes.</summary>
internal static class JsonTextPatch
{
    private const string Step = "  ";

    /// <summary>The patched text.</summary>
    /// <param name="text">The text, without a byte order mark.</param>
    /// <param name="patch">A patch that fits the text; its tests are taken as passed.</param>
    /// <exception cref="JsonPatchException">An operation names a place that is not there, or is of a kind that texts do not take.</exception>
    public static byte[] Apply(ReadOnlySpan<byte> text, JsonPatch patch)
    {
        var edited = text.ToArray();
        foreach (var operation in patch.Operations)
        {
            edited = operation.Op switch
            {
                "test" => edited,
                "add" => Add(edited, operation),
                "replace" => Replace(edited, operation),
                "remove" => Remove(edited, operation),
                _ => throw new JsonPatchException($"A text takes no operation '{operation.Op}'."),
            };
        }

        return edited;
    }

    private static byte[] Replace(byte[] text, JsonPatchOperation operation)
    {
        var node = TextNode.Read(text).Find(operation.Path) ?? throw Missing(operation);
        return Splice(text, node.Start, node.End, OneLineJson.Write(operation.Value!.Value));
    }

    private static byte[] Remove(byte[] text, JsonPatchOperation operation)
    {
        var (parent, last) = Parent(text, operation);
        var index = parent.Child(last);
        if (index < 0)
        {
            throw Missing(operation);
        }

        var children = parent.Children!;
        return children.Count == 1 ? Splice(text, parent.Start + 1, parent.End - 1, "")
            : index + 1 < children.Count ? Splice(text, children[index].Start, children[index + 1].Start, "")
            : Splice(text, children[index - 1].Value.End, children[index].Value.End, "");
    }

    private static byte[] Add(byte[] text, JsonPatchOperation operation)
    {
        var (parent, last) = Parent(text, operation);
        var children = parent.Children ?? throw Missing(operation);
        var value = (parent.IsList ? "" : OneLineJson.Name(last)) + OneLineJson.Write(operation.Value!.Value);
        var known = parent.Child(last);
        if (!parent.IsList && known >= 0)
        {
            return Replace(text, operation);
        }

        if (children.Count == 0)
        {
            return Splice(text, parent.Start + 1, parent.End - 1, Alone(text, parent, value));
        }

        if (parent.IsList && known >= 0)
        {
            var gap = Gap(text, children[Math.Max(1, known) < children.Count ? Math.Max(1, known) : 0].Start);
            return Splice(text, children[known].Start, children[known].Start, $"{value},{(children.Count == 1 ? Gap(text, children[0].Start) : gap)}");
        }

        var end = children[^1].Value.End;
        return Splice(text, end, end, $",{Gap(text, children[^1].Start)}{value}");
    }

    /// <summary>The only child of a list or an object: on a line of its own where the list or object begins on one.</summary>
    private static string Alone(byte[] text, TextNode parent, string value)
    {
        var start = parent.Start;
        while (start > 0 && text[start - 1] is not ((byte)'\n' or (byte)',' or (byte)'{' or (byte)'['))
        {
            start--;
        }

        if (start == 0 || text[start - 1] != '\n')
        {
            return $" {value} ";
        }

        var margin = start;
        while (text[margin] is (byte)' ' or (byte)'\t')
        {
            margin++;
        }

        var line = (start > 1 && text[start - 2] == '\r' ? "\r\n" : "\n") + Encoding.UTF8.GetString(text, start, margin - start);
        return $"{line}{Step}{value}{line}";
    }

    /// <summary>The white space before a place.</summary>
    private static string Gap(byte[] text, int at)
    {
        var start = at;
        while (start > 0 && text[start - 1] is (byte)' ' or (byte)'\t' or (byte)'\n' or (byte)'\r')
        {
            start--;
        }

        return Encoding.UTF8.GetString(text, start, at - start);
    }

    private static (TextNode Parent, string Last) Parent(byte[] text, JsonPatchOperation operation)
    {
        if (!JsonPatchTarget.TryParts(operation.Path, out var parts) || parts.Length == 0)
        {
            throw Missing(operation);
        }

        var parent = TextNode.Read(text).Find(operation.Path[..operation.Path.LastIndexOf('/')]);
        return (parent?.Children is null ? throw Missing(operation) : parent, parts[^1]);
    }

    private static byte[] Splice(byte[] text, int start, int end, string middle) =>
        [.. text.AsSpan(0, start), .. Encoding.UTF8.GetBytes(middle), .. text.AsSpan(end)];

    private static JsonPatchException Missing(JsonPatchOperation operation) => new($"There is no place '{operation.Path}' in the text.");
}
