using System.Text.Json;
using RoutingRules.Documents;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>Writes edits into the text of a show.</summary>
public static class ShowText
{
    /// <summary>An edit in words, with the elements as one line of JSON.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="edit"/> is null.</exception>
    public static string Describe(ShowEdit edit)
    {
        ArgumentNullException.ThrowIfNull(edit);
        var before = edit.BeforeElement is { } old ? OneLineJson.Write(ElementJson.Of(old)) : "";
        var after = edit.AfterElement is { } now ? OneLineJson.Write(ElementJson.Of(now)) : "";
        return edit.Kind switch
        {
            EditKind.Insert => $"put in at {edit.Pointer}: {after}",
            EditKind.Remove => $"take out {edit.Pointer}: {before}",
            _ => $"change {edit.Pointer}: {before} to {after}",
        };
    }

    /// <summary>The edited text. Bytes outside the edits keep their layout; new elements stand on one line, in the indentation of their neighbours.</summary>
    /// <remarks>The result is read again: unless it gives exactly the edited show, the whole document is written anew.</remarks>
    /// <param name="utf8Json">The text of the show before the edits.</param>
    /// <param name="edits">The edits, in order.</param>
    /// <param name="edited">The show after the edits.</param>
    /// <exception cref="ArgumentNullException"><paramref name="edited"/> is null.</exception>
    public static EditedText Edit(ReadOnlySpan<byte> utf8Json, ValueList<ShowEdit> edits, Show edited)
    {
        ArgumentNullException.ThrowIfNull(edited);
        var mark = Utf8Mark.Length(utf8Json);
        JsonPatch? patch = null;
        try
        {
            patch = EditPatch.Of(utf8Json, edits);
            byte[] text = [.. utf8Json[..mark], .. JsonTextPatch.Apply(utf8Json[mark..], patch)];
            var read = ShowReader.Read(text);
            if (read.IsUsable && edited.Equals(read.Value))
            {
                return new EditedText
                {
                    Utf8 = text,
                    Patch = patch,
                    IsRewritten = false,
                };
            }
        }
        catch (Exception fault) when (fault is JsonPatchException or JsonException or InvalidOperationException or ArgumentException)
        {
            // A text of an older format, or with names that have no place in a patch, is written anew.
        }

        return new EditedText
        {
            Utf8 = ShowWriter.Text(edited),
            Patch = patch,
            IsRewritten = true,
        };
    }
}
