using System.Globalization;
using RoutingRules.Documents.Tables;

namespace RoutingRules.Documents.Archives;

/// <summary>Documents that come one after the other in one text: JSON Lines, or whole documents of many lines each.</summary>
public static class DocumentStream
{
    /// <summary>The documents of a text, as they come.</summary>
    /// <remarks>
    /// JSON values with blanks, line breaks or nothing between them. A malformed one does not stop the others: what comes next begins at the next line
    /// that begins with a brace. One beyond the limit does, and so does a failing stream, as nobody can tell where the next begins. Each document but a
    /// single one is called <c>path!/number</c>, counted from 1; lines and columns are those of the text. An empty text is one empty document. One document
    /// is in memory at a time.
    /// </remarks>
    /// <param name="stream">The text, UTF-8 with or without a byte order mark; stays open.</param>
    /// <param name="path">What to call it.</param>
    /// <param name="numbersOne">True to number a single document as well; false to call it like the text, for which the first waits for what follows.</param>
    /// <param name="limits">Bounds of each document; null for <see cref="ReadLimits.Default"/>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stream"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    public static IEnumerable<DocumentFile> Read(Stream stream, string path, bool numbersOne = true, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentException.ThrowIfNullOrEmpty(path);
        return Documents(new JsonSplitter(stream, limits ?? ReadLimits.Default), path, numbersOne);
    }

    private static IEnumerable<DocumentFile> Documents(JsonSplitter splitter, string path, bool isNumbered)
    {
        if (Next(splitter, path) is not { } document)
        {
            yield return new DocumentFile { Path = path };
            yield break;
        }

        isNumbered = isNumbered || HasMore(splitter);
        for (var number = 1; ; number++)
        {
            yield return isNumbered
                ? document with
                {
                    Path = DocumentFile.Inside(path, number.ToString(CultureInfo.InvariantCulture)),
                    TextPath = path,
                }
                : document;
            if (Next(splitter, path) is not { } next)
            {
                yield break;
            }

            document = next;
        }
    }

    private static DocumentFile? Next(JsonSplitter splitter, string path)
    {
        try
        {
            return splitter.Find(out var at)
                ? new DocumentFile
                {
                    Path = path,
                    Start = at,
                    Utf8 = splitter.Take(out var problem),
                    Problem = problem,
                }
                : null;
        }
        catch (Exception fault) when (IsOfStream(fault))
        {
            splitter.Stop();
            return DocumentFile.Failed(path, $"Reading failed: {fault.Message.TrimEnd('.')}.", "Check what sends the documents.");
        }
    }

    /// <summary>Whether anything follows; a stream that fails has something to tell, which the next reading does.</summary>
    private static bool HasMore(JsonSplitter splitter)
    {
        try
        {
            return splitter.Find(out _);
        }
        catch (Exception fault) when (IsOfStream(fault))
        {
            return true;
        }
    }

    private static bool IsOfStream(Exception fault) => fault is IOException or UnauthorizedAccessException or NotSupportedException;
}
