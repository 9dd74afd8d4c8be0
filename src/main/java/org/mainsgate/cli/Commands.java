package org.mainsgate.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import picocli.CommandLine;

/** The commands, each made with the program that it belongs to. */
final class Commands implements CommandLine.IFactory {
  private static final Map<String, Function<App, Object>> BY_NAME = new LinkedHashMap<>();

  static {
    BY_NAME.put("start", StartCommand::new);
    BY_NAME.put("add", AddCommand::new);
    BY_NAME.put("next", NextCommand::new);
    BY_NAME.put("check", CheckCommand::new);
    BY_NAME.put("report", ReportCommand::new);
    BY_NAME.put("close", CloseCommand::new);
    BY_NAME.put("identity", app -> new IdentityCommand());
    BY_NAME.put("seal", SealCommand::new);
    BY_NAME.put("handover", HandoverCommand::new);
    BY_NAME.put("verify", VerifyCommand::new);
    BY_NAME.put("accept", AcceptCommand::new);
    BY_NAME.put("tag", TagCommand::new);
    BY_NAME.put("rules", app -> new RulesCommand());
  }

  /** The commands of commands. */
  private static final Map<Class<?>, Function<App, Object>> BY_TYPE =
      Map.of(
          IdentityCommand.New.class, IdentityCommand.New::new,
          IdentityCommand.Show.class, IdentityCommand.Show::new,
          IdentityCommand.Trust.class, IdentityCommand.Trust::new,
          RulesCommand.RulesCheck.class, RulesCommand.RulesCheck::new,
          RulesCommand.RulesTest.class, RulesCommand.RulesTest::new,
          RulesPages.class, RulesPages::new,
          RulesSchema.class, RulesSchema::new,
          RulesShow.class, RulesShow::new,
          RulesTrust.class, RulesTrust::new);

  private final App app;

  private Commands(App app) {
    this.app = app;
  }

  /**
   * The line of command for some arguments. Where the first names a command, the others are left
   * out: looking through all of them takes a tenth of a start.
   */
  static CommandLine line(App app, String... arguments) {
    Commands factory = new Commands(app);
    CommandLine line = new CommandLine(new TopCommand(), factory);
    String first = arguments.length == 0 ? "" : arguments[0];
    BY_NAME.forEach(
        (name, command) -> {
          if (name.equals(first) || !BY_NAME.containsKey(first)) {
            line.addSubcommand(name, new CommandLine(command.apply(app), factory));
          }
        });
    return line;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    Function<App, Object> command = BY_TYPE.get(type);
    return command == null
        ? CommandLine.defaultFactory().create(type)
        : type.cast(command.apply(app));
  }
}
