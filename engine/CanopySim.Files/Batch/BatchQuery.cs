using System.Data;
using System.Data.Common;
using System.Globalization;
using System.Text.RegularExpressions;
using DuckDB.NET.Data;

namespace CanopySim.Files.Batch;

/// <summary>A question to a dataset that cannot be answered; the message is the database's.</summary>
public sealed class QueryException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>What a question gave: names of columns, and cells as text; null where there is nothing.</summary>
public sealed record QueryResult(IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string?>> Rows);

/// <summary>
/// Asks a merged dataset by SQL: views <c>seasons</c> and <c>courses</c>, nothing else. The database lives in memory, may read
/// the dataset's folder and no other, loads no extension, and takes one SELECT.
/// </summary>
public sealed partial class BatchQuery : IDisposable
{
    private readonly DuckDBConnection _connection = new("DataSource=:memory:");

    /// <param name="merged">Folder of the dataset.</param>
    /// <param name="seasons">Columns of the table of seasons.</param>
    /// <param name="threads">Most threads.</param>
    /// <param name="memoryMegabytes">Most memory.</param>
    /// <exception cref="QueryException">The tables lack columns of the plan.</exception>
    public BatchQuery(string merged, TableSchema seasons, int threads, int memoryMegabytes)
    {
        var folder = Path.GetFullPath(merged);
        _connection.Open();
        Execute(string.Create(CultureInfo.InvariantCulture, $"SET threads = {threads}"));
        Execute(string.Create(CultureInfo.InvariantCulture, $"SET memory_limit = '{memoryMegabytes}MB'"));
        Execute("SET temp_directory = ''");
        Execute("SET autoinstall_known_extensions = false");
        Execute("SET autoload_known_extensions = false");
        Execute("SET allow_community_extensions = false");
        // A pattern is checked as it is written, what it finds as it is called.
        var folders = new[] { folder, Literal(folder) }.Distinct().Select(one => Text(one + Path.DirectorySeparatorChar));
        Execute($"SET allowed_directories = [{string.Join(", ", folders)}]");
        Execute("SET enable_external_access = false");
        try
        {
            Execute(View("seasons", folder, seasons));
            Execute(View("courses", folder, CoursesTable.Schema, "scenario"));
        }
        catch (DuckDBException error)
        {
            throw new QueryException($"the merged tables are not those of this plan, or hold no season: merge again ({error.Message.ReplaceLineEndings(" ")})", error);
        }

        Execute("SET lock_configuration = true");
    }

    /// <summary>The answer to a SELECT.</summary>
    /// <exception cref="QueryException">It is no SELECT, or the database refuses it.</exception>
    public QueryResult Ask(string sql, CancellationToken stop)
    {
        try
        {
            CheckSelect(sql);
            using var command = _connection.CreateCommand();
            command.CommandText = sql;
            using var stopping = stop.Register(command.Cancel);
            using var reader = command.ExecuteReader();
            var columns = Enumerable.Range(0, reader.FieldCount).Select(reader.GetName).ToList();
            var rows = new List<IReadOnlyList<string?>>();
            while (reader.Read())
            {
                stop.ThrowIfCancellationRequested();
                rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(column => Cell(reader, column))]);
            }

            return new QueryResult(columns, rows);
        }
        catch (DuckDBException error)
        {
            stop.ThrowIfCancellationRequested();
            throw new QueryException(error.Message, error);
        }
    }

    public void Dispose() => _connection.Dispose();

    private static string? Cell(IDataRecord reader, int column) => reader.IsDBNull(column)
        ? null
        : reader.GetValue(column) switch
        {
            bool truth => truth ? "true" : "false",
            double number => number.ToString("R", CultureInfo.InvariantCulture),
            DateTime time => time.ToString(time.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture),
            DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            System.Collections.IEnumerable list and not string => $"[{string.Join(", ", list.Cast<object?>().Select(item => Convert.ToString(item, CultureInfo.InvariantCulture)))}]",
            var value => Convert.ToString(value, CultureInfo.InvariantCulture),
        };

    // The database's own parser decides: it turns SELECTs into JSON and nothing else.
    private void CheckSelect(string sql)
    {
        using var command = _connection.CreateCommand();
        command.CommandText = $"SELECT json_serialize_sql({Text(sql)})";
        using var json = System.Text.Json.JsonDocument.Parse((string)command.ExecuteScalar()!);
        var root = json.RootElement;
        if (root.GetProperty("error").GetBoolean())
        {
            var isOther = root.GetProperty("error_type").GetString() == "not implemented";
            throw new QueryException(isOther ? "one SELECT is answered, and nothing else" : root.GetProperty("error_message").GetString()!);
        }

        var statements = root.GetProperty("statements").GetArrayLength();
        if (statements != 1) throw new QueryException($"{statements} statements; expected one SELECT");
    }

    private void Execute(string sql)
    {
        using DbCommand command = _connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    // Columns in the order of the contract: what stands in the folder's name comes last by itself.
    private static string View(string name, string folder, TableSchema schema, params string[] more)
    {
        var files = Text(Path.Combine(Literal(folder), name, "*", "*.parquet"));
        var columns = string.Join(", ", schema.Columns.Select(column => column.Name).Concat(more).Select(Identifier));
        return $"CREATE VIEW {name} AS SELECT {columns} FROM read_parquet({files}, hive_partitioning = true, hive_types_autocast = false)";
    }

    // A path in which nothing is a pattern.
    private static string Literal(string path) => PatternSigns().Replace(path, "[$0]");

    private static string Text(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";

    private static string Identifier(string name) => $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    [GeneratedRegex(@"[\[*?]")]
    private static partial Regex PatternSigns();
}
